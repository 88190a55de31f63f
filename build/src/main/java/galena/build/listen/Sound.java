package galena.build.listen;

import galena.build.figure.Figure;
import java.util.ArrayList;
import java.util.List;

/**
 * What a listener gets, in figures.
 *
 * @param sentLow lower −3 dB point of the envelope that is sent
 * @param sentHigh upper
 * @param heardLow lower −3 dB point behind the set
 * @param heardHigh upper
 * @param depth negative peak for 1 kHz at the programme's level
 * @param sentDistortion of the envelope, 1 kHz at the programme's level
 * @param heardDistortion behind the set
 * @param swing of 1 kHz at the programme's level, small-signal
 * @param hum lines of the mains: depth and swing of each
 */
public record Sound(
        Figure sentLow,
        Figure sentHigh,
        Figure heardLow,
        Figure heardHigh,
        Figure depth,
        Figure sentDistortion,
        Figure heardDistortion,
        Figure swing,
        List<Figure> hum) {
    public Sound {
        hum = List.copyOf(hum);
    }

    public List<Figure> figures() {
        List<Figure> all = new ArrayList<>(
                List.of(sentLow, sentHigh, heardLow, heardHigh, depth, sentDistortion, heardDistortion, swing));
        all.addAll(hum);
        return List.copyOf(all);
    }
}
