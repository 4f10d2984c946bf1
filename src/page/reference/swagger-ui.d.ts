/** What `swagger-ui-bundle.js` leaves in the window. */
declare function SwaggerUIBundle(options: {
  url: string;
  dom_id: string;
  deepLinking: boolean;
  docExpansion: "list" | "full" | "none";
  defaultModelsExpandDepth: number;
  validatorUrl: null;
}): unknown;
