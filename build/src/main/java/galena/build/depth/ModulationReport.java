package galena.build.depth;

import galena.build.modulation.AudioResponse;
import galena.build.modulation.ToneAnswer;
import java.util.List;

/**
 * What a build's programme does to its carrier.
 *
 * @param name of the build
 * @param carrier unmodulated, Hz
 * @param source of the audio
 * @param tone at the level and frequency asked for
 * @param sweep the same at other levels, from low to high; empty unless asked for
 * @param response of a small tone
 * @param lowSetBy parts that set its lower −3 dB point, strongest first
 * @param highSetBy the upper one
 * @param supplySwing Hz of swing for a volt of 100 Hz ripple on the supply; 0 without a supply
 * @param supplyHum depth for a volt of it, a fraction
 * @param swingVerdict in words, depth beside it
 * @param cures of swing, worth most first
 * @param notes what a builder should know besides
 */
public record ModulationReport(
        String name,
        double carrier,
        String source,
        ToneAnswer tone,
        List<ToneAnswer> sweep,
        AudioResponse response,
        List<Cause> lowSetBy,
        List<Cause> highSetBy,
        double supplySwing,
        double supplyHum,
        String swingVerdict,
        List<Cure> cures,
        List<String> notes) {
    public ModulationReport {
        sweep = List.copyOf(sweep);
        lowSetBy = List.copyOf(lowSetBy);
        highSetBy = List.copyOf(highSetBy);
        cures = List.copyOf(cures);
        notes = List.copyOf(notes);
    }

    /** A value and by how many percent the point moves for a percent of it. */
    public record Cause(String what, double share) {}

    /**
     * A change that was tried by solving the changed circuit.
     *
     * @param what to do
     * @param cause the way by which the swing comes, should this cure it
     * @param swing with it at the depth that the build has now, Hz
     * @param depth of the audio's level with it, a fraction
     * @param carrier with it, Hz
     * @param verified whether swing and depth are the full envelope's; the small tone's otherwise
     */
    public record Cure(String what, String cause, double swing, double depth, double carrier, boolean verified) {}
}
