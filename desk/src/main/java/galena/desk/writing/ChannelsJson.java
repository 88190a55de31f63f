package galena.desk.writing;

import galena.build.channels.Channels;
import galena.trade.channel.Landing;
import galena.trade.channel.RankedChannel;

/** Every channel and every way out of the drawer as JSON. Frequencies in hertz. */
public final class ChannelsJson {
    private ChannelsJson() {}

    public static String of(Channels channels) {
        return Json.document("channels", json -> write(json, channels));
    }

    private static void write(Json json, Channels c) {
        json.text("name", c.name())
                .number("spacing", (double) c.raster().spacing())
                .number("stations", c.stations());
        c.wanted().ifPresent(w -> json.object("wanted", () -> channel(json, w)));
        json.each("ranked", c.ranked(), r -> channel(json, r));
        json.each("ways", c.ways(), w -> landing(json.number("rank", w.rank()), w.landing()));
        json.texts("notes", c.notes());
    }

    private static void channel(Json json, RankedChannel channel) {
        json.number("frequency", channel.frequency())
                .number("dayPoints", channel.dayPoints())
                .number("nightPoints", channel.nightPoints())
                .truth("onBothRasters", channel.onBothRasters());
        json.each("nuisances", channel.nuisances(), n -> json.text(
                        "kind", n.kind().name().toLowerCase(java.util.Locale.ROOT))
                .number("points", n.points())
                .number("tone", n.tone())
                .truth("day", n.day())
                .truth("night", n.night())
                .text("words", n.words()));
    }

    private static void landing(Json json, Landing landing) {
        json.number("channel", landing.channel())
                .text("recipe", landing.recipe())
                .number("frequency", landing.frequency())
                .number("error", landing.error())
                .number("whistle", landing.whistle())
                .text("pulled", landing.pulled().name())
                .number("pullNeeded", landing.pullNeeded())
                .number("pullRoom", landing.pullRoom())
                .truth("reachable", landing.isReachable());
    }
}
