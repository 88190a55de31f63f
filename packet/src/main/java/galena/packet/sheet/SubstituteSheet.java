package galena.packet.sheet;

import galena.build.quantity.Unit;
import galena.build.spread.Drawn;
import galena.build.substitute.DeviceChoice;
import galena.build.substitute.Survey;
import galena.build.substitute.ValueRange;
import galena.build.substitute.ValueRange.Step;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What changes with other parts. */
final class SubstituteSheet {
    private static final String NONE = "—";

    private SubstituteSheet() {}

    static Optional<Section> of(Findings findings) {
        return findings.outlook()
                .substitutes()
                .filter(r -> !r.devices().isEmpty() || !r.values().isEmpty())
                .map(SubstituteSheet::section);
    }

    private static Section section(Survey all) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                "Every candidate was put in its place, solved, trimmed back to the channel and held against the"
                        + " intent; devices with typical, weakest and strongest specimens. A value is within its range as long as the"
                        + " intent is kept, the output stays within 3 dB, the programme's level too, the audio band is not cut and the"
                        + " current drawn stays below one and a half times its own."));
        Map<String, List<DeviceChoice>> byFitted = new LinkedHashMap<>();
        for (DeviceChoice d : all.devices())
            byFitted.computeIfAbsent(d.fitted() + " (" + String.join(", ", d.parts()) + ")", f -> new ArrayList<>())
                    .add(d);
        byFitted.forEach((fitted, choices) -> blocks.add(new Grid(
                "In place of " + fitted + ", all of them together.",
                List.of("Type", "Fits", "Carrier before trimming", "Trimmer then", "Output", "Supply", "Remark"),
                choices.stream().map(d -> device(all.own(), d)).toList())));
        if (!all.values().isEmpty())
            blocks.add(new Grid(
                    "Other values. Next lower and next higher are those of E12, with what they do to the carrier before"
                            + " trimming and to the output.",
                    List.of("Part", "Value", "Will do", "Next lower", "Next higher", "Of two"),
                    all.values().stream().map(v -> value(all.own(), v)).toList()));
        return new Section("substitutes", "Substitutes", blocks);
    }

    private static List<String> device(Drawn own, DeviceChoice d) {
        return List.of(
                d.type(),
                d.fits() ? "yes" : "no",
                d.typical().map(t -> shift(own, t)).orElse(NONE),
                d.typical()
                        .flatMap(t -> Optional.ofNullable(t.values().get(Drawn.Quantity.TRIM)))
                        .map(Wording::percent)
                        .orElse(NONE),
                d.typical().map(t -> output(own, t)).orElse(NONE),
                d.typical()
                        .flatMap(t -> Optional.ofNullable(t.values().get(Drawn.Quantity.SUPPLY)))
                        .map(a -> Wording.number(a, Unit.AMPERE, 2))
                        .orElse(NONE),
                String.join("; ", d.failures()));
    }

    private static String shift(Drawn own, Drawn there) {
        Double is = there.values().get(Drawn.Quantity.AS_SET),
                was = own.values().get(Drawn.Quantity.AS_SET);
        return is == null || was == null ? NONE : Wording.signed(is - was, Unit.HERTZ, 2);
    }

    private static String output(Drawn own, Drawn there) {
        Double is = there.values().get(Drawn.Quantity.OUTPUT),
                was = own.values().get(Drawn.Quantity.OUTPUT);
        return is == null || was == null ? NONE : Wording.decibels(is / was);
    }

    private static List<String> value(Drawn own, ValueRange v) {
        return List.of(
                v.part(),
                Wording.number(v.value(), v.unit(), 2),
                unbroken(Instead.range(v)),
                step(own, v, false),
                step(own, v, true),
                v.pair().map(p -> Instead.pair(p, v.unit())).orElse(""));
    }

    private static String unbroken(String text) {
        return text.replace(' ', '\u00A0');
    }

    private static String step(Drawn own, ValueRange v, boolean up) {
        return v.nearest().stream()
                .filter(s -> up == s.value() > v.value())
                .findFirst()
                .map(s -> words(own, v, s))
                .orElse(NONE);
    }

    private static String words(Drawn own, ValueRange v, Step s) {
        String text = unbroken(Wording.number(s.value(), v.unit(), 2)) + ": " + unbroken(shift(own, s.drawn())) + ", "
                + unbroken(output(own, s.drawn()));
        return s.fits() ? text : text + "; " + String.join("; ", s.failures());
    }
}
