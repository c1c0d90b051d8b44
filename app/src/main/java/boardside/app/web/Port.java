package boardside.app.web;

import boardside.app.practice.Failure;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.channels.ServerSocketChannel;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.DetectorConnectionFactory;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.jspecify.annotations.Nullable;

/** The port served on. It is bound before anything else is started, so that a taken one is known at once. */
final class Port {
    private final ServerSocketChannel channel;

    private Port(ServerSocketChannel channel) {
        this.channel = channel;
    }

    /**
     * Binds a port.
     *
     * @param number 0 for any free one
     * @param everywhere on all of the machine's addresses; else on loopback only
     * @throws Failure.BadInput if it is taken or not allowed
     */
    static Port bind(int number, boolean everywhere) {
        ServerSocketChannel channel = null;
        try {
            channel = ServerSocketChannel.open();
            InetAddress loopback = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
            channel.bind(everywhere ? new InetSocketAddress(number) : new InetSocketAddress(loopback, number));
            return new Port(channel);
        } catch (IOException e) {
            close(channel);
            if (e instanceof BindException && String.valueOf(e.getMessage()).contains("in use")) {
                throw new Failure.BadInput("port " + number + " is taken: maybe Boardside is running already. Stop that"
                        + " program, or give another port with --port");
            }
            throw new Failure.BadInput(
                    "port " + number + " cannot be used (" + e.getMessage() + "): give another port with --port");
        }
    }

    int number() {
        return channel.socket().getLocalPort();
    }

    /**
     * Serves on it.
     *
     * @param certificate for HTTPS, or null for plain HTTP; with one, plain requests are heard too, to be sent on
     */
    Connector connector(Server server, HttpConfiguration http, @Nullable Certificate certificate) {
        HttpConnectionFactory plain = new HttpConnectionFactory(http);
        ServerConnector connector;
        if (certificate == null) {
            connector = new ServerConnector(server, plain);
        } else {
            // Which names are answered to is the Guard's to say, for both schemes alike.
            http.addCustomizer(new SecureRequestCustomizer(false));
            SslContextFactory.Server context = new SslContextFactory.Server();
            context.setKeyStore(certificate.keys());
            context.setKeyStorePassword(certificate.password());
            SslConnectionFactory tls = new SslConnectionFactory(context, plain.getProtocol());
            connector = new ServerConnector(server, new DetectorConnectionFactory(tls), plain);
        }
        try {
            connector.open(channel);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return connector;
    }

    /** Gives the port back where nothing came to serve on it. */
    void release() {
        close(channel);
    }

    private static void close(@Nullable ServerSocketChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
