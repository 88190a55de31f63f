package galena.desk.writing;

import galena.build.predict.Coverage;

/** A coverage as JSON; the shape is {@code galena/schema/coverage.json}. */
public final class CoverageJson {
    private CoverageJson() {}

    /** @param coverage with at least one point */
    public static String of(Coverage coverage) {
        return Json.document("coverage", json -> json.text("part", coverage.part())
                .text("site", coverage.site())
                .number("lowest", coverage.lowest())
                .number("highest", coverage.highest())
                .each("points", coverage.points(), p -> json.number("position", p.position())
                        .number("frequency", p.frequency())
                        .number("amplitude", p.amplitude())));
    }
}
