import "./reference.css";

const darkness = matchMedia("(prefers-color-scheme: dark)");
const followDarkness = () => document.documentElement.classList.toggle("dark-mode", darkness.matches);
darkness.addEventListener("change", followDarkness);
followDarkness();

SwaggerUIBundle({
  url: "/api/openapi.json",
  dom_id: "#calls",
  deepLinking: true,
  docExpansion: "list",
  defaultModelsExpandDepth: 0,
  validatorUrl: null,
});
