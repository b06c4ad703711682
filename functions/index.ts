export * from "./ages";
export * from "./window-status";
export { setDateSystem } from "./date-system";
export { CellFailure } from "./failure";
export { FUNCTIONS, NAMESPACE, type WorksheetFunction } from "./registry";
