import { Button } from "@fluentui/react-components";
import { placeOf } from "../../words/records";
import { usePane } from "../pane-context";

/** Names a cell or a range, and brings it into sight. */
export function ShowCell({ sheet, cell }: { sheet: string; cell: string }) {
  const { actions } = usePane();
  const place = placeOf(sheet, cell);
  return (
    <Button size="small" onClick={() => actions.showCell(sheet, cell)}>
      Show {place}
    </Button>
  );
}
