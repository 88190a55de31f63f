package galena.packet.sheet;

import galena.build.folder.Build;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Setting;
import galena.packet.page.Page;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/** The sections of a packet in the order in which a friend would need them. */
public final class Sheets {
    private static final List<Function<Findings, Optional<Section>>> SECTIONS = List.of(
            VerdictSheet::of,
            CautionSheet::of,
            SchematicSheet::of,
            PartsSheet::of,
            SubstituteSheet::of,
            WindingSheet::of,
            LayoutSheet::of,
            PowerUpSheet::of,
            AlignmentSheet::of,
            ReadingsSheet::of,
            PictureSheet::of,
            FaultSheet::of,
            ReachSheet::of,
            CurveSheet::of,
            SpreadSheet::of,
            DriftSheet::of,
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
        return new Page(prediction.name(), subtitle, trace, sections, terms(findings.build()));
    }

    /** What a reader looks up: parts, test points, nets. */
    private static List<String> terms(Build build) {
        Set<String> terms = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        terms.addAll(build.parts().keySet());
        terms.addAll(build.points().keySet());
        return List.copyOf(terms);
    }
}
