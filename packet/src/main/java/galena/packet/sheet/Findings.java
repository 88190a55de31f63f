package galena.packet.sheet;

import galena.build.expect.Expected;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.packet.schematic.Schematic;
import java.util.Optional;

/**
 * Everything that a packet is written from.
 *
 * @param folder the build
 * @param prediction of the build as it stands in the file
 * @param expected on the bench
 * @param schematic drawn
 */
public record Findings(BuildFolder folder, Prediction prediction, Expected expected, Schematic schematic) {
    Build build() {
        return folder.build();
    }

    Optional<Oscillation> oscillation() {
        return prediction.running() instanceof Oscillation o ? Optional.of(o) : Optional.empty();
    }
}
