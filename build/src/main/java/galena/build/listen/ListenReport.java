package galena.build.listen;

import java.util.List;
import java.util.Optional;

/**
 * What was listened to and what came of it.
 *
 * @param name of the build
 * @param carrier Hz
 * @param receiver in words
 * @param mistuned Hz that the set stands beside the carrier
 * @param air distance and noise; empty for a set beside the build, without noise
 * @param without why there is no noise, where there is none; empty otherwise
 * @param sound what a listener gets of tones
 * @param agreements the reduced model beside the full envelope
 * @param order where the memory stands
 * @param pathError largest departure of the fitted audio path, a share
 * @param tankError largest departure of the fitted sidebands, a share
 * @param happened on the way
 */
public record ListenReport(
        String name,
        double carrier,
        String receiver,
        double mistuned,
        Optional<Air> air,
        String without,
        Sound sound,
        List<Agreement> agreements,
        String order,
        double pathError,
        double tankError,
        Happened happened) {
    /** Stands beside everything that can be played. */
    public static final String CAUTION =
            "Hearing: turn the volume down before playing, above all on headphones. The file fades in and stays below"
                    + " full scale; how loud that is, your equipment decides.";

    public ListenReport {
        agreements = List.copyOf(agreements);
    }

    /** Largest error of the depth among the looks, points as a share; 0 where there were none. */
    public double worstDepth() {
        return agreements.stream().mapToDouble(Agreement::depthError).max().orElse(0);
    }

    /** Largest error of the distortion among the looks; 0 where there were none. */
    public double worstDistortion() {
        return agreements.stream().mapToDouble(Agreement::distortionError).max().orElse(0);
    }
}
