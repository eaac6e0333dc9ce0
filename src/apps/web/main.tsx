import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./tokens.css";
import "./fonts.css";
import "./base.css";
import { App } from "./app.tsx";

const root = document.getElementById("page");
if (root)
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
