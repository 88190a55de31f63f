package galena.packet.sheet;

import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Setting;
import galena.packet.page.Page;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The sections of a packet in the order in which a friend would need them. */
public final class Sheets {
    private static final List<Function<Findings, Optional<Section>>> SECTIONS = List.of(
            VerdictSheet::of,
            CautionSheet::of,
            SchematicSheet::of,
            PartsSheet::of,
            CoilSheet::of,
            LayoutSheet::of,
            PowerUpSheet::of,
            AlignmentSheet::of,
            ReadingsSheet::of,
            ReachSheet::of,
            CurveSheet::of,
            ResultsSheet::of,
            TraceSheet::of);

    private Sheets() {}

    public static Page page(Findings findings) {
        List<Section> sections = new ArrayList<>();
        for (Function<Findings, Optional<Section>> section : SECTIONS)
            section.apply(findings).ifPresent(sections::add);
        Prediction prediction = findings.prediction();
        Setting setting = prediction.setting();
        String subtitle = "A medium-wave AM transmitter for a few metres: how to build it and what to expect";
        String trace =
                prediction.name() + ", inputs " + prediction.digest().substring(0, 16) + ", " + setting.accuracy();
        return new Page(prediction.name(), subtitle, trace, sections);
    }
}
