export { cellText, looksLikeFormula } from "../../../workbook/sheet-text";
