package boardside.app.web;

import org.jspecify.annotations.Nullable;

/**
 * How to serve.
 *
 * @param port 0 for any free one
 * @param lan whether others than this machine may connect: in a household the devices of the house network, after pairing; in
 *     hosted mode whoever can reach it
 * @param tls the certificate for HTTPS, or null for plain HTTP
 * @param demo whether the store is the example
 * @param openMetrics whether everybody who can reach the server may read its figures
 * @param hosting how hosted mode is reached, or null for a household without accounts
 */
public record ServerOptions(
        int port,
        boolean lan,
        @Nullable Certificate tls,
        boolean demo,
        boolean openMetrics,
        @Nullable Hosting hosting) {
    /** With figures for this machine alone. */
    public ServerOptions(int port, boolean lan, @Nullable Certificate tls, boolean demo, @Nullable Hosting hosting) {
        this(port, lan, tls, demo, false, hosting);
    }

    /** For a household. */
    public ServerOptions(int port, boolean lan, @Nullable Certificate tls, boolean demo) {
        this(port, lan, tls, demo, null);
    }

    /** This machine only, plain HTTP. */
    public static ServerOptions local(int port) {
        return new ServerOptions(port, false, null, false);
    }

    /** Whether accounts are required. */
    public boolean hosted() {
        return hosting != null;
    }
}
