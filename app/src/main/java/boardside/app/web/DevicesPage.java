package boardside.app.web;

import boardside.app.account.QrCode;
import boardside.app.practice.Device;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** On the machine that runs Boardside: how to let another device in, and which are in. */
public final class DevicesPage {
    private final Web web;

    DevicesPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows.
     *
     * @param offer how to get in, or null while only this machine may ask
     * @param devices those that are in
     * @param secure whether it is served over HTTPS
     */
    public record View(@Nullable Offer offer, List<Entry> devices, boolean secure) {}

    /** The code as picture, link and text. */
    public record Offer(int size, String path, String address, String code, String until) {}

    /** A device with its times worded. */
    public record Entry(String id, String name, String paired, String seen) {}

    void show(Context ctx) {
        Optional<Offer> offer = web.house().invite().map(this::offer);
        List<Entry> devices =
                web.house().devices().all().stream().map(this::entry).toList();
        View view = new View(offer.orElse(null), devices, web.options().tls() != null);
        web.show(ctx, "devices", web.texts().of("devices.title"), Map.of("view", view));
    }

    private Offer offer(Invitation invitation) {
        QrCode picture = QrCode.of(invitation.link());
        return new Offer(
                picture.size(),
                picture.path(),
                web.house().addresses().get(0),
                invitation.spaced(),
                web.time(invitation.until()));
    }

    private Entry entry(Device device) {
        return new Entry(
                device.id(), device.name(), web.dayAndTime(device.pairedAt()), web.dayAndTime(device.seenAt()));
    }

    void shutOut(Context ctx) {
        web.house().devices().revoke(ctx.pathParam("id"));
        ctx.redirect("/devices?said=device.out");
    }
}
