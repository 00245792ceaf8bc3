package fettle.cli;

import fettle.calibration.PairsCurve;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.reading.PairsCsv;
import fettle.refusal.InputRefusedException;
import fettle.table.InputFile;
import fettle.uncertainty.MonteCarloResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/**
 * {@code fit --pairs}: files of pairs, each fitted by itself.
 *
 * @param session the session
 * @param model model
 * @param betweenBlock whether between-block scatter is estimated
 * @param at responses for predictions
 * @param monteCarlo what Monte Carlo is asked for
 * @param seed seed
 * @param json whether JSON is asked for
 */
record PairsFit(
    Session session,
    ModelId model,
    boolean betweenBlock,
    double[] at,
    MonteCarloRequest monteCarlo,
    long seed,
    boolean json) {
  private static final int GRID = 50;

  /**
   * Files handed to a thread at a time: enough to hide the hand-over, few enough to stay in order.
   */
  private static final int CHUNK = 64;

  int run(List<String> names) throws InterruptedException {
    List<String> files = new ArrayList<>();
    boolean several = names.size() > 1;
    for (String name : names) {
      Path path = session.resolve(name);
      if (Files.isDirectory(path)) {
        several = true;
        files.addAll(csvFilesOf(path, name));
      } else {
        files.add(name);
      }
    }
    return several ? batch(files) : single(files.get(0));
  }

  private int single(String file) {
    PairsOutput output;
    try {
      output = fit(file, session.processors());
    } catch (FitFailedException failure) {
      throw refusal(file, failure);
    }
    if (json) {
      session.out().println(output.json());
    } else {
      output.print(session.out());
    }
    return ExitStatus.DONE;
  }

  private static InputRefusedException refusal(String file, FitFailedException failure) {
    return new InputRefusedException(
        "No fit: " + failure.getMessage() + ".",
        file,
        "pairs that determine the model's parameters",
        "choose a model with fewer parameters, or correct or add pairs");
  }

  private static List<String> csvFilesOf(Path directory, String name) {
    try (Stream<Path> entries = Files.list(directory)) {
      List<String> files =
          entries
              .map(entry -> entry.getFileName().toString())
              .filter(entry -> entry.endsWith(".csv"))
              .sorted()
              .map(entry -> name.endsWith("/") ? name + entry : name + "/" + entry)
              .toList();
      if (files.isEmpty()) {
        throw new InputRefusedException(
            "The folder holds no .csv file.",
            name,
            "pairs files ending in .csv",
            "name the folder that holds the pairs files");
      }
      return files;
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private int batch(List<String> files) throws InterruptedException {
    ExecutorService pool = Executors.newFixedThreadPool(session.processors());
    boolean bad = false;
    try {
      List<Future<List<Line>>> chunks = new ArrayList<>();
      for (int from = 0; from < files.size(); from += CHUNK) {
        List<String> chunk = files.subList(from, Math.min(files.size(), from + CHUNK));
        chunks.add(pool.submit(() -> chunk.stream().map(this::line).toList()));
      }
      for (Future<List<Line>> chunk : chunks) {
        for (Line line : chunk.get()) {
          session.out().println(line.json());
          bad |= line.bad();
        }
      }
    } catch (ExecutionException failure) {
      throw new IllegalStateException("a file's fit failed", failure.getCause());
    } finally {
      pool.shutdownNow();
    }
    return bad ? ExitStatus.NEGATIVE : ExitStatus.DONE;
  }

  private record Line(String json, boolean bad) {}

  private Line line(String file) {
    try {
      return new Line(fit(file, 1).json(), false);
    } catch (FitFailedException failure) {
      return error(file, refusal(file, failure).getMessage());
    } catch (InputRefusedException refusal) {
      return error(file, refusal.getMessage());
    }
  }

  private static Line error(String file, String message) {
    return new Line(JsonOut.object(one -> one.put("file", file).put("error", message)), true);
  }

  private PairsOutput fit(String file, int threads) throws FitFailedException {
    byte[] bytes = InputFile.bytes(session.resolve(file));
    PairsCurve curve = PairsCurve.of(PairsCsv.read(bytes, file), model, betweenBlock);
    double[] grid = at.length > 0 ? at : curve.grid(GRID);
    Optional<MonteCarloResult> result =
        switch (monteCarlo.kind()) {
          case NONE -> Optional.empty();
          case FIXED -> Optional.of(curve.monteCarlo(grid, monteCarlo.trials(), seed, threads));
          case ADAPTIVE -> Optional.of(curve.adaptiveMonteCarlo(grid, seed, threads));
        };
    return new PairsOutput(file, curve, at, grid, result);
  }
}
