package boardside.engine.rules;

/** What becomes of the first throw after a round in which neither side scored; bodies differ. */
public enum FirstThrow implements Word {
    /** The side that threw first keeps it (ACO, season 16, and leagues that follow the ACL). */
    KEEP,
    /** The side that threw last has it (American Cornhole Association, play rules as used by local events). */
    SWAP
}
