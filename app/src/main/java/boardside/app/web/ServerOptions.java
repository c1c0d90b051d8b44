package boardside.app.web;

import org.jspecify.annotations.Nullable;

/**
 * How to serve.
 *
 * @param port 0 for any free one
 * @param lan whether other devices of the house network may ask (after pairing); else this machine only
 * @param tls the certificate for HTTPS, or null for plain HTTP
 * @param demo whether the store is the example
 */
public record ServerOptions(int port, boolean lan, @Nullable Certificate tls, boolean demo) {
    /** This machine only, plain HTTP. */
    public static ServerOptions local(int port) {
        return new ServerOptions(port, false, null, false);
    }
}
