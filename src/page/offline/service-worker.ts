import { createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

/** What this file uses of its global scope, whose own types cannot stand beside a page's. */
declare const self: {
  skipWaiting(): Promise<void>;
  addEventListener(type: "message", listener: (event: { readonly data?: { readonly type?: string } }) => void): void;
  /** Filled in by the bundler: every file of this version of the page. */
  readonly __WB_MANIFEST: { readonly url: string; readonly revision: string | null }[];
};

/** One version as a whole: a page never gets code of another. What the service computes is never kept. */
precacheAndRoute(self.__WB_MANIFEST);

// A link opens the service's newest page; only the page's own address is answered from here.
registerRoute(new NavigationRoute(createHandlerBoundToURL("/"), { allowlist: [/^\/$/] }));

self.addEventListener("message", (event) => {
  if (event.data?.type === "SKIP_WAITING") void self.skipWaiting();
});
