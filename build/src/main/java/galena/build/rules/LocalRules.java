package galena.build.rules;

import galena.build.folder.Intent;
import galena.trade.limit.RuleBook;
import java.util.Optional;

/**
 * The region of an intent.
 *
 * @param region its name in full
 * @param check where the rules in force are to be read
 * @param note what to know of what is held
 */
public record LocalRules(String region, String check, String note) {
    /** Empty when the intent names no region, or one that is not held. */
    public static Optional<LocalRules> of(Intent intent) {
        return intent.rules()
                .flatMap(name -> RuleBook.standard().region(name))
                .map(region -> new LocalRules(region.name(), region.check(), region.note()));
    }
}
