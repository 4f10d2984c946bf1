const LINK_PATH = /^\/b\/([^/]+)$/;
const SHELF_PATH = /^\/s\/([^/]+)$/;

/** The code in the page's own address. */
export function codeInAddress(): string | undefined {
  return LINK_PATH.exec(location.pathname)?.[1];
}

/** The code of a shelf there. */
export function shelfCodeInAddress(): string | undefined {
  return SHELF_PATH.exec(location.pathname)?.[1];
}
