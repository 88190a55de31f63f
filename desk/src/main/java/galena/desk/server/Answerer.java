package galena.desk.server;

/** Answers what has passed the gate. Called from several threads. */
public interface Answerer {
    /**
     * @param ask admitted
     * @return the answer; one with status 404 where there is none
     * @throws Exception a fault: it is told to {@link PageServer}'s listener, and the browser sees status 500 without details
     */
    Reply answer(Ask ask) throws Exception;
}
