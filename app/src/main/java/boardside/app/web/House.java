package boardside.app.web;

import boardside.app.account.Devices;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The server as the house network sees it.
 *
 * @param devices who is let in
 * @param network what this machine is called there; {@link Network#NONE} while other devices may not ask
 * @param scheme http or https
 * @param port served on
 * @param hosting how hosted mode is reached, or null for a household
 */
record House(
        Devices devices,
        Network network,
        String scheme,
        int port,
        @Nullable Hosting hosting) {
    /** The address on this machine itself; in hosted mode the one it is asked under. */
    String address() {
        return hosting == null || hosting.addresses().isEmpty()
                ? address("localhost")
                : hosting.addresses().get(0) + "/";
    }

    /** Addresses for other devices, the likeliest first and only the short ones if any; empty while they may not ask. */
    List<String> addresses() {
        if (hosting != null && !hosting.addresses().isEmpty()) {
            return hosting.addresses().stream()
                    .skip(1)
                    .map(address -> address + "/")
                    .toList();
        }
        List<InetAddress> all = network.addresses();
        List<InetAddress> four =
                all.stream().filter(address -> address instanceof Inet4Address).toList();
        return (four.isEmpty() ? all : four)
                .stream().map(address -> address(Network.host(address))).toList();
    }

    private String address(String host) {
        return scheme + "://" + host + ":" + port + "/";
    }

    /** A code that works now and where to use it, or empty while other devices may not ask, and in hosted mode. */
    Optional<Invitation> invite() {
        if (hosting != null) {
            return Optional.empty();
        }
        return addresses().stream().findFirst().map(address -> {
            Devices.Offer offer = devices.offer();
            return new Invitation(address + "pair?code=" + offer.code(), offer.code(), offer.until());
        });
    }
}
