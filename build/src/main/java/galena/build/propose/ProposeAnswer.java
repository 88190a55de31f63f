package galena.build.propose;

import java.util.List;

/** A proposal, or why there is none. */
public sealed interface ProposeAnswer permits Proposal, ProposeAnswer.None {
    /**
     * @param reason in words that follow "No proposal: "
     * @param considered what was looked at, each with its outcome
     */
    record None(String reason, List<Proposal.Considered> considered) implements ProposeAnswer {
        public None {
            considered = List.copyOf(considered);
        }
    }
}
