package galena.desk.writing;

import galena.build.channels.Channels;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.trade.channel.Landing;
import galena.trade.channel.Nuisance;
import galena.trade.channel.RankedChannel;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;

/** A ranking of channels as a page for a terminal: the best first, the wanted one with all that is against it, the box. */
public final class ChannelsText {
    private final Channels channels;
    private final Page page;

    private ChannelsText(Channels channels, Terminal terminal) {
        this.channels = channels;
        page = new Page(terminal);
    }

    /** @param most channels and ways that are printed */
    public static void print(Channels channels, int most, Terminal terminal) {
        ChannelsText text = new ChannelsText(channels, terminal);
        text.page.title(
                "Channels for " + channels.name(),
                "every " + channels.raster().spacing() / 1000 + " kHz, " + channels.stations()
                        + (channels.stations() == 1 ? " station listed" : " stations listed"));
        text.wanted();
        text.ranked(most);
        text.ways(most);
        text.notes();
        text.page.print();
    }

    private void wanted() {
        if (channels.wanted().isEmpty()) return;
        RankedChannel wanted = channels.wanted().get();
        int rank = rank(wanted);
        page.heading("Wanted: " + kilohertz(wanted.frequency())
                + (rank > 0 ? ", number " + rank + " of " + channels.ranked().size() : ", beside the raster"));
        if (wanted.nuisances().isEmpty()) page.line("Nothing known against it.");
        for (Nuisance nuisance : wanted.nuisances())
            page.line(points(nuisance.points()) + " points" + time(nuisance) + ": " + nuisance.words()
                    + whistle(nuisance) + ".");
    }

    private int rank(RankedChannel wanted) {
        for (int k = 0; k < channels.ranked().size(); k++)
            if (channels.ranked().get(k).frequency() == wanted.frequency()) return k + 1;
        return 0;
    }

    private void ranked(int most) {
        page.heading("Best channels; points against them by day and by night, fewer is better");
        Page.Table table = page.table().folding();
        table.row("", "channel", "day", "night", "both rasters", "against it");
        List<RankedChannel> first =
                channels.ranked().subList(0, Math.min(most, channels.ranked().size()));
        for (int k = 0; k < first.size(); k++) {
            RankedChannel channel = first.get(k);
            table.row(
                    k + 1 + ".",
                    kilohertz(channel.frequency()),
                    points(channel.dayPoints()),
                    points(channel.nightPoints()),
                    channel.onBothRasters() ? "yes" : "",
                    channel.reason());
        }
        table.end();
    }

    private void ways(int most) {
        if (channels.ways().isEmpty()) return;
        page.heading("Out of the drawer, for the best channels first");
        Page.Table table = page.table().folding();
        table.row("", "channel", "tone", "parts and dividers");
        for (Channels.Way way :
                channels.ways().subList(0, Math.min(most, channels.ways().size()))) {
            Landing landing = way.landing();
            table.row(
                    way.rank() + ".",
                    kilohertz(landing.channel()),
                    String.format(Locale.ROOT, "%+.0f Hz", landing.error()).replace("-", "−"),
                    recipe(landing) + "; " + pull(landing));
        }
        table.end();
        int more = channels.ways().size() - most;
        if (more > 0) page.line(more + " more ways; --most prints more, --json has all.");
        page.line("The tone is what it makes against a carrier on the channel, unpulled.");
        page.line("What a part can be pulled by is common practice, half the least span that builders report: try it.");
    }

    /** A mix is divided as a whole. */
    private static String recipe(Landing landing) {
        String recipe = landing.recipe();
        int dividers = recipe.indexOf(" /");
        if (landing.second().isEmpty() || dividers < 0) return recipe;
        return "(" + recipe.substring(0, dividers) + ")" + recipe.substring(dividers);
    }

    private static String pull(Landing landing) {
        if (landing.pullNeeded() == 0) return "lands on it";
        String room = Engineering.print(landing.pullRoom(), Unit.HERTZ, 2);
        String which = landing.second().isEmpty()
                ? "it"
                : landing.pulled().equals(landing.first()) ? "the first" : "the second";
        String by = "pull " + which + (landing.pullNeeded() > 0 ? " up " : " down ")
                + Engineering.print(Math.abs(landing.pullNeeded()), Unit.HERTZ, 3);
        return by + (landing.isReachable() ? " of " + room : ", more than the " + room + " it takes");
    }

    private void notes() {
        page.heading("Notes");
        for (String note : channels.notes()) page.line(note);
        page.line(
                "A station counts 1, 3, 6 or 10 points by strength, tenfold on the channel, fourfold within 6 kHz, twice within"
                        + " 10 kHz, once as an image: a judgement of Galena's. The frequencies are arithmetic.");
        page.line("Rasters and other services are recalled, unverified. Your regulator says where you may transmit.");
    }

    private static String time(Nuisance nuisance) {
        return nuisance.day() && nuisance.night() ? "" : nuisance.day() ? " by day" : " by night";
    }

    private static String whistle(Nuisance nuisance) {
        return nuisance.tone() > 0
                        && !nuisance.words().contains("whistle")
                        && !nuisance.words().contains("Hz in such sets")
                ? ", a tone of " + Engineering.print(nuisance.tone(), Unit.HERTZ, 3)
                : "";
    }

    private static String points(double points) {
        return BigDecimal.valueOf(points).stripTrailingZeros().toPlainString();
    }

    private static String kilohertz(double hertz) {
        return BigDecimal.valueOf(Math.round(hertz), 3).stripTrailingZeros().toPlainString() + " kHz";
    }
}
