import * as z from "zod";

// Zod would probe for `eval`, which the page's content security policy forbids and reports; this must run before any schema.
z.config({ jitless: true });
