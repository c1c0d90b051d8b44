package boardside.app.web;

import java.io.UncheckedIOException;
import java.net.DatagramSocket;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What this machine is called in its house network.
 *
 * @param addresses the one other devices most likely reach first
 * @param names host names, in lower case
 */
public record Network(List<InetAddress> addresses, List<String> names) {
    /** No network but the machine itself. */
    static final Network NONE = new Network(List.of(), List.of());

    /** What loopback is called. */
    static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[0:0:0:0:0:0:0:1]");

    /** An address set aside for examples (RFC 5737), to ask which way out the system would take; nothing is sent. */
    private static final InetSocketAddress OUTWARD = new InetSocketAddress("192.0.2.1", 9);

    /** What the system says now. */
    public static Network here() {
        List<InetAddress> addresses = new ArrayList<>();
        try {
            for (NetworkInterface face : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                if (face.isUp() && !face.isLoopback()) {
                    Collections.list(face.getInetAddresses()).stream()
                            .filter(address -> !address.isLinkLocalAddress() && !address.isLoopbackAddress())
                            .forEach(addresses::add);
                }
            }
        } catch (SocketException e) {
            throw new UncheckedIOException(e);
        }
        InetAddress outward = outward();
        addresses.sort(Comparator.comparing((InetAddress address) -> !address.equals(outward))
                .thenComparing(address -> !(address instanceof Inet4Address)));
        return new Network(List.copyOf(addresses), ownNames());
    }

    private static @Nullable InetAddress outward() {
        try (DatagramSocket socket = new DatagramSocket()) {
            socket.connect(OUTWARD);
            return socket.getLocalAddress();
        } catch (SocketException | UncheckedIOException e) {
            return null;
        }
    }

    private static List<String> ownNames() {
        Set<String> names = new LinkedHashSet<>();
        try {
            String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
            if (name.matches("[a-z0-9]([a-z0-9.-]*[a-z0-9])?") && !name.equals("localhost")) {
                names.add(name);
                String first = name.replaceFirst("\\..*", "");
                names.add(first);
                names.add(first + ".local");
            }
        } catch (UnknownHostException e) {
            // A machine without a name is reached by its addresses.
        }
        return List.copyOf(names);
    }

    /** Every host a request may name: this machine's addresses and names, and what loopback is called. */
    Set<String> hosts() {
        Set<String> hosts = new LinkedHashSet<>(LOOPBACK);
        addresses.forEach(address -> hosts.add(host(address)));
        hosts.addAll(names);
        return Collections.unmodifiableSet(hosts);
    }

    /** An address as the host of a URL. */
    static String host(InetAddress address) {
        String text = address.getHostAddress().replaceFirst("%.*", "");
        return text.contains(":") ? "[" + text + "]" : text;
    }

    /** The host in a Host header, in the form of {@link #hosts()}; empty where there is none. */
    static String hostOf(@Nullable String header) {
        String host = header == null ? "" : header.strip().toLowerCase(Locale.ROOT);
        if (host.startsWith("[")) {
            try {
                // Brackets hold an address, never a name, so nothing is looked up.
                int end = host.indexOf(']');
                return end < 0 ? "" : host(InetAddress.getByName(host.substring(0, end + 1)));
            } catch (UnknownHostException e) {
                return "";
            }
        }
        int colon = host.indexOf(':');
        return colon < 0 ? host : host.substring(0, colon);
    }
}
