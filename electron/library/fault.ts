import type { HostTrouble } from "../../shared-model/host-api.ts";
import { codeOf } from "./disk.ts";

/** What a host could not do, in words for an organist. Nothing else leaves the library or a host as an error. */
export class HostFault extends Error {
  readonly trouble: HostTrouble["trouble"];

  constructor(trouble: HostTrouble["trouble"], words: string) {
    super(words);
    this.name = "HostFault";
    this.trouble = trouble;
  }
}

type Known = readonly [HostTrouble["trouble"], string];

const GONE: Known = ["gone", "It is not there any more. Was it moved, renamed or taken away?"];
const CLOSED: Known = ["not-allowed", "You may not read or write there; the permissions do not allow it."];
const FULL: Known = ["no-room", "The disk is full. Make room, then try again; nothing was written."];

const KNOWN: Readonly<Record<string, Known>> = {
  ENOENT: GONE,
  ENOTDIR: GONE,
  EACCES: CLOSED,
  EPERM: CLOSED,
  EROFS: ["not-allowed", "This disk can only be read."],
  ELOOP: ["not-allowed", "It is a link. Links are not followed; put the file itself there."],
  EBUSY: ["not-allowed", "Another program holds it. Close it there, then try again."],
  EMLINK: ["not-allowed", "It is a link. Links are not followed; put the file itself there."],
  ENOSPC: FULL,
  EDQUOT: FULL,
  EFBIG: ["too-large", "It is longer than this disk allows."],
  ENAMETOOLONG: ["not-allowed", "Its name is too long for this disk."],
  EIO: ["failed", "The disk answers with an error. Save a copy elsewhere and have the disk looked at."],
};

/** An error met at `file`, a name that the person knows, as a fault; faults pass as they are. */
export function faultAt(file: string, error: unknown): HostFault {
  if (error instanceof HostFault) return error;
  const code = codeOf(error);
  const known = code === undefined ? undefined : KNOWN[code];
  if (known) return new HostFault(known[0], `${file}: ${known[1]}`);
  const says = code ?? (error instanceof Error ? error.message : "no reason");
  return new HostFault("failed", `${file}: The system refuses it and says: ${says}.`);
}
