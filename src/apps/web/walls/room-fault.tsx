import { Component, type ReactNode } from "react";
import { walls } from "../../../core/say/rooms/walls.ts";

interface Props {
  /** Another one begins anew. */
  readonly where: string;
  readonly children: ReactNode;
}

/** A fault of one screen leaves the others standing. */
export class RoomFault extends Component<Props, { readonly at: string | null }> {
  override state = { at: null as string | null };

  override componentDidCatch(): void {
    this.setState({ at: this.props.where });
  }

  static getDerivedStateFromError(): null {
    return null;
  }

  override render(): ReactNode {
    if (this.state.at !== this.props.where) return this.props.children;
    return (
      <div role="alert" className="room-fault">
        <h1>{walls.fault}</h1>
        <p>{walls.faultHelp}</p>
        <button type="button" onClick={() => location.reload()}>
          {walls.reload}
        </button>
      </div>
    );
  }
}
