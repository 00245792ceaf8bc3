package fettle.cli;

import fettle.fit.ModelId;
import fettle.refusal.InputRefusedException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fits a dossier, or files of pairs. */
@Command(
    name = "fit",
    sortOptions = false,
    header = "Fit a curve: candidates, recommendation, uncertainty; keeps a draft.",
    description = {
      "",
      "With a dossier: tries all candidate models, recommends one with its reason, and keeps a",
      "draft of the curve. With --pairs: fits one model to files of pairs and keeps nothing."
    },
    footer = {"", "Example: fettle fit --pairs blocks.csv --model power --at 2400,2600 --json"})
final class FitCommand implements Callable<Integer> {
  private final Session session;

  @Mixin private CommonOptions common;

  @Parameters(arity = "0..1", paramLabel = "DOSSIER", description = "Name of the dossier.")
  private String dossier;

  @Option(
      names = "--pairs",
      arity = "1..*",
      paramLabel = "FILE|DIR",
      description = "CSV files of response,hardness and their uncertainties, or folders of them.")
  private List<String> pairs;

  @Option(names = "--model", paramLabel = "MODEL", description = "Model to fit.")
  private String model;

  @Option(names = "--by", paramLabel = "PERSON", description = "Who chose the model of a dossier.")
  private String by;

  @Option(names = "--reason", paramLabel = "TEXT", description = "Why it was chosen.")
  private String reason;

  @Option(
      names = "--at",
      split = ",",
      paramLabel = "R",
      description = "Responses at which hardness and uncertainty are wanted.")
  private double[] at = {};

  @Option(
      names = "--between-block",
      description = "Also estimate between-block scatter from pairs.")
  private boolean betweenBlock;

  @Option(
      names = "--monte-carlo",
      paramLabel = "N|adaptive",
      description = "Monte Carlo with exactly N trials, or as many as JCGM 101 7.9 asks.")
  private String monteCarlo;

  @Option(names = "--seed", paramLabel = "S", description = "Seed of Monte Carlo. Default: 1.")
  private long seed = 1;

  FitCommand(Session session) {
    this.session = session;
  }

  @Override
  public Integer call() throws Exception {
    MonteCarloRequest request = MonteCarloRequest.parse(monteCarlo);
    if (pairs != null) {
      if (dossier != null) {
        throw new InputRefusedException(
            "Both a dossier (" + dossier + ") and --pairs are given.",
            "the call",
            "one of the two",
            "leave one out");
      }
      return new PairsFit(session, modelId(), betweenBlock, at, request, seed, common.json)
          .run(pairs);
    }
    throw new InputRefusedException(
        "Neither a dossier nor --pairs is given.",
        "the call",
        "fettle fit DOSSIER, or fettle fit --pairs FILE --model MODEL",
        "name what is to be fitted");
  }

  private ModelId modelId() {
    return ModelId.parse(model)
        .orElseThrow(
            () ->
                new InputRefusedException(
                    model == null ? "No model is given." : "\"" + model + "\" is not a model.",
                    "option --model",
                    ModelId.accepted(),
                    "name one of them"));
  }
}
