import type { ButtonHTMLAttributes, ReactNode } from "react";

type ActionProps = Omit<ButtonHTMLAttributes<HTMLButtonElement>, "type" | "className"> & {
  readonly children: ReactNode;
};

/** The one thing that a page is there for. `second` for the other of two. */
export function Act({ second = false, children, ...rest }: ActionProps & { readonly second?: boolean }) {
  return (
    <button type="button" className={second ? "act second" : "act"} {...withoutEffect(rest)}>
      {children}
    </button>
  );
}

/** An action that has no effect now says so and keeps the focus, which a disabled button loses in the middle of its own act. */
function withoutEffect<Props extends Pick<ActionProps, "disabled" | "onClick">>({ disabled, onClick, ...rest }: Props) {
  return disabled ? { ...rest, "aria-disabled": true } : { ...rest, onClick };
}

/** A quiet action, underlined: its words are the target. `chosen` sets it in the colour of what can be done. */
export function Plain({ chosen = false, children, ...rest }: ActionProps & { readonly chosen?: boolean }) {
  return (
    <button type="button" className={chosen ? "plain pick" : "plain"} {...withoutEffect(rest)}>
      {children}
    </button>
  );
}
