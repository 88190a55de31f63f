package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.PartKind;
import galena.build.predict.Prediction.Curve;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.spread.Drawn;
import galena.packet.page.Page.Item;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The steps that set the depth of modulation: which level, which preset, what to see, what not. */
final class DepthSteps {
    private final Findings findings;
    private final Curve curve;

    DepthSteps(Findings findings, Curve curve) {
        this.findings = findings;
        this.curve = curve;
    }

    List<Item> steps() {
        List<Item> steps = new ArrayList<>();
        if (!(curve.negativePeak() instanceof Figure.Known negative)
                || !(curve.positivePeak() instanceof Figure.Known positive)) return steps;
        steps.add(Item.of(
                "Feed " + Wording.number(curve.level(), Unit.VOLT, 3) + " peak at 1 kHz into " + curve.source() + ".",
                "Expect a positive peak of " + Wording.value(positive) + " and a negative peak of "
                        + Wording.value(negative)
                        + " on the " + curve.quantity() + "."
                        + drawn(Drawn.Quantity.DEPTH)
                                .map(w ->
                                        " In 95 of 100 copies the negative peak lies within " + Wording.window(w) + ".")
                                .orElse(""),
                "If both are far less: follow the tone with the audio voltages under \"When it does not work\".",
                "If the trough is flat before the crest is: the modulated stage has too little standing current."));
        findings.build().intent().modulation().ifPresent(wanted -> steps.add(wanted(wanted, negative)));
        return steps;
    }

    private Optional<Figure.Known> drawn(Drawn.Quantity quantity) {
        return findings.outlook()
                .spread()
                .flatMap(s -> Optional.ofNullable(s.windows().get(quantity)));
    }

    private Item wanted(Quantity wanted, Figure.Known negative) {
        List<String> below = new ArrayList<>();
        findings.outlook()
                .substitutes()
                .flatMap(r -> Optional.ofNullable(r.own().values().get(Drawn.Quantity.AUDIO)))
                .ifPresent(a -> below.add(needed(a)));
        if (curve.deepestClean() instanceof Figure.Known deepest)
            below.add("Check: up to " + Wording.value(deepest) + " the envelope stays below "
                    + Wording.number(curve.cleanLimit(), Unit.FRACTION, 1)
                    + " distortion; on a trapezoid its edges stay straight.");
        below.add(
                "If it distorts before that depth: go back a little, and look at the direct voltages of the modulated stage.");
        String now = negative.value() >= wanted.value() ? "turn the level down" : "raise the level";
        return Item.of(
                "Set the depth: " + now + presets() + " until the negative peak reads " + wanted.text() + ".",
                below.toArray(String[]::new));
    }

    private String presets() {
        List<String> presets = findings.build().adjustments().stream()
                .filter(a -> findings.build().part(a).orElseThrow().kind() == PartKind.PRESET)
                .toList();
        return presets.isEmpty()
                ? " of the programme"
                : " with " + String.join(" or ", presets) + ", or that of the programme";
    }

    /** The level at the source with the presets as set; as much less of the preset's travel is the same thing. */
    private String needed(double audio) {
        String words =
                "Expect that at " + Wording.number(audio, Unit.VOLT, 2) + " peak with the presets as set and typical"
                        + " parts"
                        + drawn(Drawn.Quantity.AUDIO)
                                .map(w -> "; in 95 of 100 copies, hot or cold, battery fresh or nearly flat, within "
                                        + Wording.window(w))
                                .orElse("")
                        + ".";
        double share = audio / curve.level();
        return share >= 1
                ? words + " That is " + Wording.number(share, Unit.NUMBER, 2) + " times the programme's level."
                : words + " The programme's own level is more than that.";
    }
}
