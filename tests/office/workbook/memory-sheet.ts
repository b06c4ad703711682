import { invalidArgument } from "../protocol/rich-error";
import { type Area, within } from "./area";
import { entered } from "./typed-text";

export type CellValue = string | number | boolean;

/** How a cell was made to look: one property of `Range.format`, over an area; the last one counts. */
interface Look {
  readonly area: Area;
  readonly property: string;
  readonly value: unknown;
}

export interface MemoryTable {
  readonly id: string;
  name: string;
  readonly area: Area;
  style: string;
  readonly showHeaders: boolean;
  readonly showTotals: boolean;
}

export type Properties = Map<string, unknown>;

export interface MemoryChart {
  readonly id: string;
  readonly type: string;
  readonly series: MemorySeries[];
  /** Everything else that was set, by its path: `ValueAxis.Maximum`. */
  readonly properties: Properties;
}

export interface MemorySeries {
  name: string;
  values: { readonly sheet: MemorySheet; readonly area: Area };
  xValues?: { readonly sheet: MemorySheet; readonly area: Area };
  readonly properties: Properties;
}

/** One sheet. Cells are kept by row and column. */
export class MemorySheet {
  visibility: "Visible" | "Hidden" | "VeryHidden" = "Visible";
  showGridlines = true;
  frozen: Area | null = null;
  readonly customProperties = new Map<string, string>();
  readonly page: Properties = new Map();
  readonly tables: MemoryTable[] = [];
  readonly charts: MemoryChart[] = [];
  readonly merged: Area[] = [];
  readonly columnWidths = new Map<number, number>();
  readonly rowHeights = new Map<number, number>();
  readonly formulas = new Map<string, string>();
  readonly prefixed = new Set<string>();
  private readonly values: (CellValue | undefined)[][] = [];
  private readonly formats: (string | undefined)[][] = [];
  private readonly looks: Look[] = [];

  constructor(
    readonly id: string,
    public name: string,
  ) {}

  valueAt(row: number, column: number): CellValue | undefined {
    return this.values[row]?.[column];
  }

  formatAt(row: number, column: number): string {
    return this.formats[row]?.[column] ?? "General";
  }

  lookAt(row: number, column: number, property: string): unknown {
    return this.looks.findLast((each) => each.property === property && within(each.area, row, column))?.value;
  }

  setLook(area: Area, property: string, value: unknown): void {
    this.looks.push({ area, property, value });
  }

  setFormat(row: number, column: number, format: string): void {
    (this.formats[row] ??= [])[column] = format;
  }

  /** A value as it stands in a cell, not read by Excel. */
  put(row: number, column: number, value: CellValue | undefined): void {
    (this.values[row] ??= [])[column] = value;
  }

  /** Takes over what a copy of a sheet has: cells with their formats, and custom properties. */
  takeFrom(sheet: MemorySheet): void {
    sheet.values.forEach((cells, row) => (this.values[row] = [...cells]));
    sheet.formats.forEach((cells, row) => (this.formats[row] = [...cells]));
    sheet.customProperties.forEach((value, key) => this.customProperties.set(key, value));
    this.visibility = sheet.visibility;
  }

  /** A value as it is handed to `Range.values`. */
  enter(row: number, column: number, value: unknown): void {
    if (value === null) return;
    const key = `${row}/${column}`;
    this.formulas.delete(key);
    this.prefixed.delete(key);
    if (value === "") this.put(row, column, undefined);
    else if (typeof value === "string") this.enterText(row, column, value, key);
    else if ((typeof value === "number" && Number.isFinite(value)) || typeof value === "boolean") {
      this.put(row, column, value);
    } else throw invalidArgument("Range.Values");
  }

  /** The smallest area that holds every value; null where there is none. */
  usedArea(): Area | null {
    let area: Area | null = null;
    this.values.forEach((cells, row) => {
      const left = cells.findIndex((value) => value !== undefined);
      if (left < 0) return;
      const right = cells.findLastIndex((value) => value !== undefined);
      area = area
        ? { top: area.top, left: Math.min(area.left, left), bottom: row, right: Math.max(area.right, right) }
        : { top: row, left, bottom: row, right };
    });
    return area;
  }

  /** Every value, row by row, for comparing a sheet before and after. */
  snapshot(): string {
    const { name, values, formats, looks, tables, merged, charts, visibility } = this;
    const maps = [this.customProperties, this.page, this.columnWidths, this.rowHeights, this.formulas].map((map) => [
      ...map,
    ]);
    return JSON.stringify({ name, values, formats, looks, tables, merged, charts: charts.length, visibility, maps });
  }

  private enterText(row: number, column: number, text: string, key: string): void {
    const result = entered(text, this.formatAt(row, column));
    if (!result) throw invalidArgument("Range.Values");
    this.put(row, column, result.value);
    if (result.formula !== undefined) this.formulas.set(key, result.formula);
    if (result.hasPrefix) this.prefixed.add(key);
    if (result.numberFormat) this.setFormat(row, column, result.numberFormat);
  }
}
