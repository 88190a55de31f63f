package galena.build.expect;

import galena.build.drift.DriftReport;
import galena.build.fault.FaultTree;
import galena.build.folder.BuildFolder;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.predict.Response;
import galena.build.source.BadInputException;
import galena.build.spread.SpreadReport;
import galena.build.substitute.Survey;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * All that can be said of a build as it stands in its file, each part of it taken from the cache where it is kept there.
 *
 * @param prediction of the build
 * @param expected readings and what spoils them
 * @param spread over tolerances, devices, heat and battery; empty where nothing oscillates by itself, as are the next four
 * @param faults a tree for each stage
 * @param substitutes what may stand in place of what
 * @param drift from switch-on, in a room that stays as it is
 * @param audio from the audio source to the net that is modulated
 */
public record Outlook(
        Prediction prediction,
        Expected expected,
        Optional<SpreadReport> spread,
        List<FaultTree> faults,
        Optional<Survey> substitutes,
        Optional<DriftReport> drift,
        Optional<Response> audio) {
    public Outlook {
        faults = List.copyOf(faults);
    }

    /**
     * @param progress told how far it is; may cancel
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException when the drawer can't be read for the digest
     */
    public static Outlook of(BuildFolder folder, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        return new Asking(folder, progress).all();
    }

    /** Of a build that does not oscillate by itself. */
    static Outlook silent(Prediction prediction, Expected expected) {
        return new Outlook(
                prediction,
                expected,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
