import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";

export default defineConfig({
  root: "src/apps/web",
  base: "./",
  plugins: [
    react(),
    VitePWA({
      injectRegister: false, // the page registers it itself, and offers a newer version when nobody is in the middle of something
      registerType: "prompt",
      manifest: {
        name: "Leafward",
        short_name: "Leafward",
        description:
          "Takes a damaged collection safely through drying and cleaning to the camera, and home again.",
        display: "standalone",
        background_color: "#fbf9f3",
        theme_color: "#7a2d5c",
        icons: [{ src: "leaf.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,svg,ttf}"],
        navigateFallback: "index.html",
        navigateFallbackDenylist: [/^\/api\//, /^\/papers\//, /^\/picture\.svg/],
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
    }),
  ],
  worker: { format: "es" },
  build: { outDir: "../../../dist/web", emptyOutDir: true },
});
