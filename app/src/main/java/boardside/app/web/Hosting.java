package boardside.app.web;

import boardside.app.practice.Failure;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How hosted mode is reached.
 *
 * @param addresses under which it is asked, such as https://boards.example.org, the one for links first; empty for this
 *     machine's own
 * @param proxied whether a reverse proxy stands before it, whose X-Forwarded-For and X-Forwarded-Proto are believed
 */
public record Hosting(List<URI> addresses, boolean proxied) {
    /** Checked. */
    public Hosting {
        addresses = List.copyOf(addresses);
    }

    /**
     * Reads public addresses as they are typed.
     *
     * @param tls whether the program itself serves HTTPS
     * @throws Failure.BadInput if one is no address, or cannot be what a request comes by
     */
    public static Hosting of(List<String> typed, boolean proxied, boolean tls) {
        List<URI> addresses = typed.stream().map(Hosting::address).toList();
        if (proxied && addresses.isEmpty()) {
            throw new Failure.BadInput("--behind-proxy: say under which address the proxy is asked; add --public");
        }
        Set<String> schemes = addresses.stream().map(URI::getScheme).collect(Collectors.toSet());
        if (schemes.size() > 1) {
            throw new Failure.BadInput("--public: use https for all addresses, or http for all");
        }
        if (schemes.contains("https") && !tls && !proxied) {
            throw new Failure.BadInput(
                    "--public: HTTPS has to come from somewhere; add --tls, or --behind-proxy where a"
                            + " proxy in front does it");
        }
        if (schemes.contains("http") && tls) {
            throw new Failure.BadInput("--public: with --tls the address begins with https");
        }
        return new Hosting(addresses, proxied);
    }

    private static URI address(String text) {
        try {
            URI uri = new URI(text.strip().toLowerCase(Locale.ROOT));
            boolean plain = uri.getUserInfo() == null
                    && uri.getQuery() == null
                    && uri.getFragment() == null
                    && (uri.getPath() == null || uri.getPath().matches("/?"));
            if (uri.getHost() != null && Set.of("http", "https").contains(uri.getScheme()) && plain) {
                int usual = uri.getScheme().equals("https") ? 443 : 80;
                return new URI(
                        uri.getScheme(),
                        null,
                        uri.getHost(),
                        uri.getPort() == usual ? -1 : uri.getPort(),
                        null,
                        null,
                        null);
            }
        } catch (URISyntaxException e) {
            // Said below.
        }
        throw new Failure.BadInput(
                "--public: \"" + text + "\" is no address; write it like https://boards.example.org, without a path");
    }

    /** Host names by which it is asked, in the form of {@link Network#hosts()}. */
    Set<String> hosts() {
        return addresses.stream()
                .map(address -> Network.hostOf(address.getAuthority()))
                .collect(Collectors.toSet());
    }

    /** Whether it is asked over HTTPS, whoever provides that. */
    boolean https() {
        return addresses.stream().anyMatch(address -> address.getScheme().equals("https"));
    }
}
