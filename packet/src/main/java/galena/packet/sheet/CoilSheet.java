package galena.packet.sheet;

import galena.build.folder.PartEntry;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.AtFrequency;
import galena.build.quantity.Unit;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What each coil must measure before it goes in, and what is known of how it is wound. */
final class CoilSheet {
    private CoilSheet() {}

    static Optional<Section> of(Findings findings) {
        List<PartEntry> coils = findings.build().parts().values().stream()
                .filter(p -> p.kind().isCoil() && p.value().isPresent())
                .toList();
        Optional<Oscillation> oscillation = findings.oscillation();
        if (coils.isEmpty() || oscillation.isEmpty()) return Optional.empty();
        double carrier = oscillation.get().carrier().value();
        List<List<String>> rows = coils.stream().map(c -> row(c, carrier)).toList();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                "Measure each coil before fitting it. The third column is the capacitance, strays counted,"
                        + " that resonates it on the carrier; the resistance is what its Q stands for."));
        blocks.add(new Grid(
                "Coils at the carrier.",
                List.of("Coil", "Inductance", "Resonates with", "Reactance", "Resistance", "Winding"),
                rows));
        return Optional.of(new Section("coils", "Coils", blocks));
    }

    private static List<String> row(PartEntry coil, double carrier) {
        double henry = coil.value().orElseThrow().value(), omega = 2 * Math.PI * carrier;
        String resistance = coil.values()
                .atFrequency("q")
                .map(q -> Wording.number(
                                2
                                        * Math.PI
                                        * q.frequency().value()
                                        * henry
                                        / q.value().value(),
                                Unit.OHM,
                                2) + " at " + q.frequency().text())
                .or(() -> coil.values().quantity("resistance").map(r -> r.text()))
                .orElse("none stated");
        String tolerance = " ±" + Wording.number(coil.tolerance(), Unit.FRACTION, 1);
        return List.of(
                coil.name(),
                coil.label() + tolerance,
                Wording.number(1 / (omega * omega * henry), Unit.FARAD, 3),
                Wording.number(omega * henry, Unit.OHM, 3),
                resistance,
                winding(coil, henry));
    }

    private static String winding(PartEntry coil, double henry) {
        List<String> words = new ArrayList<>();
        coil.values().quantity("turns").ifPresent(t -> {
            words.add(t.text() + " turns, " + Wording.number(henry / (t.value() * t.value()), Unit.HENRY, 3)
                    + " per turn squared");
            words.add("about " + Wording.number(2 / t.value(), Unit.FRACTION, 2)
                    + " of inductance for each turn more or less");
        });
        coil.values().quantity("rod_length").ifPresent(l -> words.add("rod " + l.text() + " long"));
        coil.values().quantity("rod_diameter").ifPresent(d -> words.add(d.text() + " thick"));
        coil.values().atFrequency("q").map(AtFrequency::text).ifPresent(q -> words.add("Q " + q));
        return String.join("; ", words);
    }
}
