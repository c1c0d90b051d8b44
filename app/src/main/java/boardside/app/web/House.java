package boardside.app.web;

import boardside.app.account.Devices;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.List;
import java.util.Optional;

/**
 * The server as the house network sees it.
 *
 * @param devices who is let in
 * @param network what this machine is called there; {@link Network#NONE} while other devices may not ask
 * @param scheme http or https
 * @param port served on
 */
record House(Devices devices, Network network, String scheme, int port) {
    /** The address on this machine itself. */
    String address() {
        return address("localhost");
    }

    /** Addresses for other devices, the likeliest first and only the short ones if any; empty while they may not ask. */
    List<String> addresses() {
        List<InetAddress> all = network.addresses();
        List<InetAddress> four =
                all.stream().filter(address -> address instanceof Inet4Address).toList();
        return (four.isEmpty() ? all : four)
                .stream().map(address -> address(Network.host(address))).toList();
    }

    private String address(String host) {
        return scheme + "://" + host + ":" + port + "/";
    }

    /** A code that works now and where to use it, or empty while other devices may not ask. */
    Optional<Invitation> invite() {
        return addresses().stream().findFirst().map(address -> {
            Devices.Offer offer = devices.offer();
            return new Invitation(address + "pair?code=" + offer.code(), offer.code(), offer.until());
        });
    }
}
