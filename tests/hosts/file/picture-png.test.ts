import { pngOf } from "../../../src/hosts/file/picture-png";

jest.mock("@resvg/resvg-js", () => {
  throw new Error("Cannot find module");
});

test("where the module that draws is not installed, a sentence says what to do", async () => {
  await expect(pngOf("<svg/>")).rejects.toThrow(
    /not installed on this machine: run "npm install" again, or ask for svg/,
  );
});
