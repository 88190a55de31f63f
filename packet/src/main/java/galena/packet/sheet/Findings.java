package galena.packet.sheet;

import galena.bench.log.Beside;
import galena.build.expect.Expected;
import galena.build.expect.Outlook;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.build.winding.WindingPlan;
import java.util.List;
import java.util.Optional;

/**
 * Everything that a packet is written from.
 *
 * @param folder the build
 * @param outlook all that was computed of the build as it stands in its file
 * @param results readings of the bench log, each beside its prediction
 * @param windings how its coils are wound
 * @param unwound coils that could not be reckoned, with the reason
 * @param schematic drawn, as SVG
 */
public record Findings(
        BuildFolder folder,
        Outlook outlook,
        List<Beside> results,
        List<WindingPlan> windings,
        List<String> unwound,
        String schematic) {
    public Findings {
        results = List.copyOf(results);
        windings = List.copyOf(windings);
        unwound = List.copyOf(unwound);
    }

    Build build() {
        return folder.build();
    }

    Prediction prediction() {
        return outlook.prediction();
    }

    Expected expected() {
        return outlook.expected();
    }

    Optional<Oscillation> oscillation() {
        return prediction().running() instanceof Oscillation o ? Optional.of(o) : Optional.empty();
    }
}
