package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What kind of part to buy and why that kind: reckoned from what the part does to the carrier, what it dissipates, what it holds. */
final class PartKinds {
    /** A percent of a value that moves the carrier by less than this share asks nothing of the part. */
    private static final double MATTERS = 1e-4;

    /** From here a capacitor is a decoupler, F, and from here an electrolytic (common practice). */
    private static final double DECOUPLES = 10e-9, ELECTROLYTIC = 1e-6;

    /** A small resistor's rating, W, and how much of it may be used (common practice). */
    private static final double RATING = 0.25, USED = 0.5;

    private final Findings findings;

    PartKinds(Findings findings) {
        this.findings = findings;
    }

    /** "film or class 1 ceramic (NP0)" */
    String kind(PartEntry part) {
        List<String> words = new ArrayList<>();
        words.add(noun(part));
        part.values()
                .quantity("tempco")
                .filter(t -> part.kind() != PartKind.CAPACITOR)
                .ifPresent(t -> words.add(t.text()));
        part.values().atFrequency("q").ifPresent(q -> words.add("Q " + q.text()));
        part.position().ifPresent(p -> words.add("set to " + Wording.percent(p)));
        return String.join(", ", words);
    }

    private String noun(PartEntry part) {
        String plain = part.kind().noun().replaceFirst("^an? ", "");
        if (part.kind() == PartKind.RESISTOR) return "resistor, metal film";
        if (part.kind() != PartKind.CAPACITOR) return plain;
        Optional<Quantity> tempco = part.values().quantity("tempco");
        if (tempco.isPresent())
            return "capacitor, film or class 1 ceramic, " + tempco.get().text();
        double farads = farads(part);
        if (farads >= ELECTROLYTIC) return "capacitor, film or electrolytic";
        if (farads >= DECOUPLES) return "capacitor, class 2 ceramic or film";
        return "capacitor, film or ceramic";
    }

    private static double farads(PartEntry part) {
        return part.value().map(Quantity::value).orElse(0.0);
    }

    /** Why that kind, in whole clauses; may be empty. */
    List<String> why(PartEntry part) {
        List<String> words = new ArrayList<>();
        Optional<Double> percent = hertzPerPercent(part);
        if (percent.isPresent()) {
            words.add("one percent moves the carrier " + Wording.number(percent.get(), Unit.HERTZ, 2)
                    + (part.kind() == PartKind.CAPACITOR ? ", so its dielectric must not drift" : ""));
        } else if (part.kind() == PartKind.CAPACITOR && farads(part) >= DECOUPLES) {
            words.add(
                    part.pins().containsValue("ground")
                            ? "it only has to hold a net still: any dielectric will do, short leads count"
                            : "it only passes audio: its value is not critical");
        }
        if (part.kind() == PartKind.CAPACITOR && farads(part) >= ELECTROLYTIC)
            polarity(part).ifPresent(words::add);
        if (part.kind() == PartKind.RESISTOR || part.kind() == PartKind.PRESET)
            power(part).ifPresent(words::add);
        if (part.kind() == PartKind.TRIMMER) slope(part).ifPresent(words::add);
        return words;
    }

    private Optional<Double> hertzPerPercent(PartEntry part) {
        return findings.expected().guard().flatMap(g -> g.parts().stream()
                .filter(p -> p.value().startsWith(part.name() + " "))
                .map(p -> Math.abs(p.perPercent().carrier()))
                .filter(hertz -> hertz > MATTERS * g.carrier())
                .findFirst());
    }

    /** Which end of an electrolytic is the positive one, from the direct voltages at its two nets. */
    private Optional<String> polarity(PartEntry part) {
        double from = mean(part.pin("from")), to = mean(part.pin("to"));
        if (Double.isNaN(from) || Double.isNaN(to) || from == to) return Optional.empty();
        String plus = from > to ? part.pin("from") : part.pin("to");
        return Optional.of("if electrolytic, plus to " + plus + " (" + Wording.number(Math.abs(from - to), Unit.VOLT, 2)
                + " across it)");
    }

    private double mean(String net) {
        if (net.equals("ground")) return 0;
        return ExpectedVoltages.running(findings).stream()
                .filter(f -> f instanceof Figure.Known k && k.at().equals(net))
                .mapToDouble(f -> ((Figure.Known) f).value())
                .findFirst()
                .orElse(Double.NaN);
    }

    private Optional<String> power(PartEntry part) {
        Double watts =
                findings.oscillation().map(o -> o.powers().get(part.name())).orElse(null);
        if (watts == null) return Optional.empty();
        return watts > USED * RATING
                ? Optional.of("takes up " + Wording.number(watts, Unit.WATT, 2) + ": it must be rated for twice that")
                : Optional.empty();
    }

    private Optional<String> slope(PartEntry part) {
        return findings.oscillation().flatMap(o -> o.adjustments().stream()
                .filter(a -> a.part().equals(part.name()) && Math.abs(a.hertzPerPercent()) > 1)
                .findFirst()
                .map(a -> "one percent of its travel moves the carrier "
                        + Wording.number(Math.abs(a.hertzPerPercent()), Unit.HERTZ, 2)
                        + ": turn it with an insulated tool"));
    }
}
