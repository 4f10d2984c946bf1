const LINK_PATH = /^\/b\/([^/]+)$/;

/** The code in the page's own address. */
export function codeInAddress(): string | undefined {
  return LINK_PATH.exec(location.pathname)?.[1];
}
