package galena.trade.limit;

import java.util.List;

/** How a transmission stands in a region. */
public sealed interface LimitAnswer {
    /** Stands beside every answer. */
    String CAUTION =
            "Figures held may be out of date or misread. Your regulator's text and licensed practice decide; stop at "
                    + "once if anybody is disturbed.";

    /**
     * The rules held, applied.
     *
     * @param region where
     * @param routes each way of meeting them; one that is met suffices
     */
    record Judged(Region region, List<RouteJudgement> routes) implements LimitAnswer {
        public Judged {
            routes = List.copyOf(routes);
        }
    }

    /** No figures are held for the region: its note says why, its check where to read. */
    record NotHeld(Region region) implements LimitAnswer {}

    /** No such region. */
    record UnknownRegion(String asked, List<String> known) implements LimitAnswer {
        public UnknownRegion {
            known = List.copyOf(known);
        }
    }
}
