import type { RichApiHost } from "./protocol/rich-api-host";

interface BridgeMessage {
  readonly id: number;
  readonly message: { readonly body: unknown };
}

export interface NativeBridge {
  onMessageFromHost: ((text: string) => void) | null;
  sendMessageToHost(text: string): void;
}

/** Carries the requests of office.js to the workbook in memory. The host may be changed between two tests. */
export function nativeBridge(current: () => RichApiHost): NativeBridge {
  const bridge: NativeBridge = {
    onMessageFromHost: null,
    sendMessageToHost(text) {
      const { id, message } = JSON.parse(text) as BridgeMessage;
      const request = typeof message.body === "string" ? message.body : JSON.stringify(message.body);
      current().take(request, (body) => {
        const reply = { id, type: 2, message: { statusCode: 200, headers: {}, body } };
        // A host answers in a task of its own, never within the request.
        setTimeout(() => bridge.onMessageFromHost?.(JSON.stringify(reply)), 0);
      });
    },
  };
  return bridge;
}
