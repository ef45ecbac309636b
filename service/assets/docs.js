"use strict";
SwaggerUIBundle({
  url: "openapi.json",
  dom_id: "#reference",
  deepLinking: true,
  validatorUrl: null,
  presets: [SwaggerUIBundle.presets.apis],
});
