package galena.build.propose;

import galena.build.attempt.Draft;
import galena.build.attempt.Stock;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.pattern.Pattern;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A pattern brought to another carrier, supply and programme by the trade's rules of thumb. Every capacitance and inductance that
 * the carrier passes goes with one over the carrier, which keeps every impedance, and so what the devices do; bias dividers keep
 * their standing voltages when the rail changes; the voltage at the modulator's foot goes with the programme's level. What comes
 * out is a start for prediction, nothing more.
 */
final class Start {
    private static final double PASSES_CARRIER = 5e-9;

    /** Base of a modulator's transistor above its foot. */
    private static final double BASE = 0.65;

    private static final double FOOT = 0.4, LEAST_FOOT = 0.2, MOST_FOOT = 0.6;

    /** Of the level, what the foot stands at: depth of 80 % with a fifth lost in the source and preset. */
    private static final double OF_LEVEL = 0.8;

    /** What the patterns' crystal and resonator are marked with, Hz. */
    private static final double MARKED = 1e6;

    private final Wish wish;
    private final Stock stock;
    private final OnHand onHand;
    private final Tuning tuning;

    Start(Wish wish, Stock stock, OnHand onHand, Tuning tuning) {
        this.wish = wish;
        this.stock = stock;
        this.onHand = onHand;
        this.tuning = tuning;
    }

    /** The pattern with the wish's intent and supply, otherwise as it is. */
    Build dressed(Pattern pattern) throws BadInputException {
        String text = pattern.text();
        String supply = wish.supplyText()
                .orElseGet(() -> text.lines()
                                .filter(l -> l.startsWith("supply:"))
                                .findFirst()
                                .orElseThrow() + "\n");
        String name = "'" + wish.build().name().replace("'", "''") + "'";
        return Draft.read("galena: 1\nname: " + name + "\n\n" + wish.intentText() + "\n" + supply + "\n"
                + text.substring(text.indexOf("\nparts:") + 1));
    }

    /** A pattern's start on an aerial. */
    Build of(Pattern pattern, OnHand.Form form) throws BadInputException {
        Build own = Draft.read(pattern.text());
        Build dressed = dressed(pattern);
        Map<String, String> changes = new LinkedHashMap<>();
        double down = own.intent().carrier().orElseThrow().value()
                / wish.build().intent().carrier().orElseThrow().value();
        for (PartEntry part : dressed.parts().values()) scaled(dressed, part, down, form, changes);
        bias(own, dressed, changes);
        devices(dressed, changes);
        return Draft.with(dressed, changes);
    }

    private void scaled(Build build, PartEntry part, double down, OnHand.Form form, Map<String, String> changes) {
        switch (part.kind()) {
            case CAPACITOR -> {
                double farads = part.value().orElseThrow().value();
                boolean audio = part.name().equals("Cm");
                put(part, farads < PASSES_CARRIER && !audio ? farads * down : farads, Unit.FARAD, changes);
            }
            case RESISTOR -> put(part, part.value().orElseThrow().value(), Unit.OHM, changes);
            case COIL -> {
                double henries = part.value().orElseThrow().value() * down;
                tuning.coil(build, part, henries, changes);
            }
            case LOOPSTICK -> {
                double henries = part.value().orElseThrow().value() * down;
                onHand.aerial(form, henries).ifPresent(w -> Tuning.replace(build, part, w.keys(), changes));
            }
            case TRIMMER -> trimmer(part, down, changes);
            case PRESET -> {
                double track = part.value().orElseThrow().value();
                changes.put(
                        part.path() + ".preset", Engineering.exact(stock.nearest(PartKind.PRESET, track), Unit.OHM));
            }
            case CRYSTAL, RESONATOR -> resonator(part, changes);
            default -> {}
        }
    }

    /** The drawer's own for this channel; its series resonance lies as far below its mark as the pattern's. */
    private void resonator(PartEntry part, Map<String, String> changes) {
        double carrier = wish.build().intent().carrier().orElseThrow().value();
        held(part.kind(), carrier)
                .filter(marked -> marked != MARKED)
                .ifPresent(marked -> changes.put(
                        part.path() + "." + part.kind().key(),
                        Engineering.print(marked * part.value().orElseThrow().value() / MARKED, Unit.HERTZ, 7)));
    }

    /** A crystal or resonator of the drawer that can be pulled onto a channel, Hz. */
    private Optional<Double> held(PartKind kind, double carrier) {
        List<Quantity> held = kind == PartKind.CRYSTAL ? stock.crystals() : stock.resonators();
        return held.stream()
                .map(Quantity::value)
                .filter(marked -> Math.abs(marked * channel(kind) - carrier) <= reach(kind))
                .min(Comparator.comparingDouble(marked -> Math.abs(marked * channel(kind) - carrier)));
    }

    /** Of its mark, where the middle of its trimmer's travel stands. */
    private static double channel(PartKind kind) {
        return kind == PartKind.CRYSTAL ? 1 : 0.999;
    }

    private static double reach(PartKind kind) {
        return kind == PartKind.CRYSTAL ? 300 : 1.5e3;
    }

    private void put(PartEntry part, double value, Unit unit, Map<String, String> changes) {
        changes.put(part.path() + "." + part.kind().key(), Engineering.exact(stock.nearest(part.kind(), value), unit));
    }

    /** As much of the tuning as in the pattern: its span goes with the capacitances. */
    private void trimmer(PartEntry part, double down, Map<String, String> changes) {
        Range own = part.range().orElseThrow();
        double span = down * (own.high().value() - own.low().value());
        Range best = stock.trimmers().stream()
                .min(Comparator.comparingDouble(
                        r -> Math.abs(Math.log((r.high().value() - r.low().value()) / span))))
                .orElseThrow();
        changes.put(part.path() + ".trimmer", best.text());
    }

    /** Dividers from the rail keep their standing voltages, up to a share that leaves room above. */
    private void bias(Build own, Build dressed, Map<String, String> changes) {
        double before = CircuitOf.state(own.supply().orElseThrow()).voltage();
        double now = CircuitOf.state(dressed.supply().orElseThrow()).voltage();
        double foot = Math.max(
                LEAST_FOOT,
                Math.min(
                        MOST_FOOT,
                        OF_LEVEL
                                * dressed.intent()
                                        .programme()
                                        .map(p -> p.level().value())
                                        .orElse(FOOT / OF_LEVEL)));
        Optional<PartEntry> rm = dressed.part("Rm"), rn = dressed.part("Rn"), re = dressed.part("Re");
        if (rm.isPresent()
                && rn.isPresent()
                && re.isPresent()
                && dressed.part("D1").isPresent()) {
            double share = foot / FOOT;
            double lower = rn.get().value().orElseThrow().value() * share;
            // the junction below Rn stands at about a base's voltage; the rest of the rail lies across Rm
            double upper = rm.get().value().orElseThrow().value() * (now - BASE - foot) / (before - BASE - FOOT);
            put(rn.get(), lower, Unit.OHM, changes);
            put(rm.get(), Math.max(upper, 1e3), Unit.OHM, changes);
            put(re.get(), re.get().value().orElseThrow().value() * share, Unit.OHM, changes);
        }
        Optional<PartEntry> ra = dressed.part("Ra"), rb = dressed.part("Rb");
        boolean pair = dressed.part("C3").isPresent();
        if (pair && ra.isPresent() && rb.isPresent()) {
            double base = Math.max(now / 3, Math.min(2 * BASE + foot + 0.3, 0.65 * now));
            double lower = rb.get().value().orElseThrow().value();
            put(ra.get(), lower * (now / base - 1), Unit.OHM, changes);
        }
        Optional<PartEntry> rs = dressed.part("Rs");
        boolean bipolar =
                dressed.part("Q1").filter(q -> q.kind() == PartKind.NPN).isPresent();
        if (rs.isPresent() && bipolar && pair && Math.abs(now / before - 1) > 0.2)
            put(rs.get(), rs.get().value().orElseThrow().value() * now / before, Unit.OHM, changes);
    }

    /** With a drawer of devices: what it lacks gives its place to the first of its kind that it holds. */
    private void devices(Build dressed, Map<String, String> changes) {
        if (!stock.hasDevices()) return;
        for (PartEntry part : dressed.parts().values()) {
            if (part.type().isEmpty() || stock.holdsDevice(part.type().get())) continue;
            List<String> held = stock.devices(part.kind());
            if (!held.isEmpty()) changes.put(part.path() + "." + part.kind().key(), held.get(0));
        }
    }

    /** Why a pattern can't serve whatever its values; empty where it may. */
    Optional<String> hindrance(Pattern pattern) throws BadInputException {
        Build own = Draft.read(pattern.text());
        double carrier = wish.build().intent().carrier().orElseThrow().value();
        List<String> lacks = new ArrayList<>();
        for (PartEntry part : own.parts().values()) {
            if (stock.hasDevices()
                    && part.type().isPresent()
                    && stock.devices(part.kind()).isEmpty())
                lacks.add(part.kind().noun());
            if (part.kind() == PartKind.CRYSTAL || part.kind() == PartKind.RESONATOR) {
                double marked = own.intent().carrier().orElseThrow().value();
                if (Math.abs(marked - carrier) > reach(part.kind())
                        && held(part.kind(), carrier).isEmpty())
                    return Optional.of(String.format(
                            Locale.ROOT,
                            "its %s is for %s, and the drawer holds none for the channel",
                            part.kind() == PartKind.CRYSTAL ? "crystal" : "resonator",
                            Engineering.print(marked, Unit.HERTZ, 5)));
            }
        }
        if (!lacks.isEmpty())
            return Optional.of("the drawer lacks "
                    + String.join(" and ", lacks.stream().distinct().toList()));
        return Optional.empty();
    }
}
