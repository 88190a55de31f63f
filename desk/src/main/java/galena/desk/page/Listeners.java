package galena.desk.page;

import galena.desk.server.Reply;
import java.io.IOException;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** The open pages, each with a queue of what it has not heard yet. A page that hears nothing for long is told to fetch all anew. */
final class Listeners {
    private static final int MOST_PAGES = 12;
    private static final int MOST_UNHEARD = 200;
    private static final int BEAT_SECONDS = 10;

    private final Set<BlockingQueue<Event>> queues = ConcurrentHashMap.newKeySet();
    private volatile boolean closed;

    private record Event(String name, String data) {}

    private static final Event LAST = new Event("", "");

    void tell(String name, String data) {
        for (BlockingQueue<Event> queue : queues) {
            if (queue.offer(new Event(name, data))) continue;
            queue.clear();
            queue.offer(new Event("again", "{}"));
        }
    }

    int count() {
        return queues.size();
    }

    boolean full() {
        return queues.size() >= MOST_PAGES;
    }

    void listen(Reply.Sink to) throws IOException, InterruptedException {
        BlockingQueue<Event> mine = new ArrayBlockingQueue<>(MOST_UNHEARD);
        queues.add(mine);
        try {
            to.event("again", "{}");
            while (!closed) {
                Event event = mine.poll(BEAT_SECONDS, TimeUnit.SECONDS);
                if (event == null) to.beat();
                else if (!event.name().isEmpty()) to.event(event.name(), event.data());
            }
        } finally {
            queues.remove(mine);
        }
    }

    void close() {
        closed = true;
        queues.forEach(queue -> queue.offer(LAST));
    }
}
