package boardside.app.web;

/** Who may call a route. Every route has exactly one rule, in {@link Routes}. */
enum Access {
    /** Anyone who can reach the server: what is needed before a device is let in. */
    EVERYONE,
    /** This machine, or a device that was let in by a pairing code. */
    DEVICE,
    /** This machine only: letting devices in and out. */
    LOCAL
}
