import { useStyles } from "../../look/styles";

/** Sentences about what was just tried; a status, so that they are heard. */
export function Messages({ messages }: { messages: readonly string[] }) {
  const styles = useStyles();
  return (
    <div role="status">
      {messages.map((message) => (
        <p key={message} className={styles.sentence}>
          {message}
        </p>
      ))}
    </div>
  );
}
