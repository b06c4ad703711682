import { createRoot } from "react-dom/client";
import { PageApp } from "../src/hosts/page/shell/page-app";
import type { PageServices } from "../src/hosts/page/shell/page-services";
import { mountPane } from "./mount";
import { FileWork } from "./page/file-work";

const files = new FileWork(new Worker(new URL("./page/file-worker.ts", import.meta.url)));

const services: PageServices = {
  readWorkbook: files.read,
  mountPane,
  sampleAddress: "sample/alder-fork.xlsx",
};

createRoot(document.getElementById("page") as HTMLElement).render(<PageApp services={services} />);
