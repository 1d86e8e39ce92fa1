import type { ReactNode } from "react";

/** What went wrong, where it went wrong, and what can be done: never by colour alone, and read out when it comes. */
export function TroubleNote({ children, actions }: { children: ReactNode; actions?: ReactNode }) {
  return (
    <div className="trouble" role="alert">
      <p>
        <span className="sev">Not done</span> {children}
      </p>
      {actions !== undefined && <div className="row">{actions}</div>}
    </div>
  );
}
