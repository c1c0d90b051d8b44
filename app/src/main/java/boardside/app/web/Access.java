package boardside.app.web;

/** Who may call a route. Every route has exactly one rule, in {@link Routes}. */
enum Access {
    /** Anyone who can reach the server: what is needed before anybody is known. */
    EVERYONE,
    /**
     * Who may record: this machine, or a device that was let in by a pairing code; in hosted mode whoever is signed in. Whose
     * records that opens is said by {@link Web#player} and {@link Web#players}, and nothing else may be shown.
     */
    DEVICE,
    /** Who may run leagues: in a household whoever may record; in hosted mode organisers and hosts. */
    ORGANISER,
    /** Hosts, in hosted mode only: accounts. */
    HOST,
    /** Programs that watch over this one: anyone, under any name. What they hear tells of nobody. */
    PROBE,
    /**
     * Who may see figures of the server: this machine (not through a proxy), in hosted mode hosts as well, and everyone where
     * that was asked for.
     */
    MONITOR,
    /** This machine only, in a household: letting devices in and out. */
    LOCAL
}
