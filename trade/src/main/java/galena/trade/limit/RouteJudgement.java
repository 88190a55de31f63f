package galena.trade.limit;

import java.util.Comparator;
import java.util.List;

/**
 * One way of meeting a region's rules.
 *
 * @param route its name
 * @param outcome the worst of its checks
 * @param verified false if any rule that counts is recalled and not read
 * @param checks every rule that applies
 * @param words why it isn't available, or empty
 */
public record RouteJudgement(String route, Outcome outcome, boolean verified, List<Check> checks, String words) {
    public RouteJudgement {
        checks = List.copyOf(checks);
    }

    static RouteJudgement of(String route, List<Check> checks) {
        Outcome worst = checks.stream()
                .map(Check::outcome)
                .max(Comparator.naturalOrder())
                .orElse(Outcome.NOT_AVAILABLE);
        boolean verified = checks.stream().allMatch(check -> check.rule().isVerified());
        return new RouteJudgement(route, worst, verified, checks, "");
    }

    static RouteJudgement notAvailable(String route, boolean verified, String why) {
        return new RouteJudgement(route, Outcome.NOT_AVAILABLE, verified, List.of(), why);
    }
}
