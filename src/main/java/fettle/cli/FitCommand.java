package fettle.cli;

import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.ModelChoice;
import fettle.fit.ModelId;
import fettle.library.LaboratoryFolder;
import fettle.refusal.InputRefusedException;
import java.util.List;
import java.util.Optional;
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
      return new PairsFit(session, modelId(), betweenBlock, at, request, seed, common.json())
          .run(pairs);
    }
    if (dossier == null) {
      throw new InputRefusedException(
          "Neither a dossier nor --pairs is given.",
          "the call",
          "fettle fit DOSSIER, or fettle fit --pairs FILE --model MODEL",
          "name what is to be fitted");
    }
    if (request.kind() != MonteCarloRequest.Kind.NONE) {
      throw new InputRefusedException(
          "Monte Carlo of a dossier is not offered yet.",
          "option --monte-carlo",
          "a fit without it, or --pairs",
          "leave the option out");
    }
    LaboratoryFolder laboratory = common.open(session);
    Analysis analysis = Calibration.analyse(laboratory.campaign(dossier), choice());
    if (analysis.chosen().isPresent()) {
      laboratory.keepDraft(dossier, analysis);
    }
    DossierFitOutput output = new DossierFitOutput(analysis, at);
    if (common.json()) {
      session.out().println(output.json());
    } else {
      output.print(session.out());
      if (analysis.chosen().isPresent()) {
        session.out().println("The draft is kept. Next: `fettle validate " + dossier + "`.");
      }
    }
    return ExitStatus.DONE;
  }

  private Optional<ModelChoice> choice() {
    if (model == null) {
      if (by != null || reason != null) {
        throw new InputRefusedException(
            "A person or a reason is given without a model.",
            "the call",
            "--model together with --by and --reason",
            "name the model, or leave both out to follow the recommendation");
      }
      return Optional.empty();
    }
    if (by == null || by.isBlank() || reason == null || reason.isBlank()) {
      throw new InputRefusedException(
          "A model for a dossier is chosen by a person, with a reason.",
          by == null || by.isBlank() ? "option --by" : "option --reason",
          "--model together with --by and --reason",
          "say who chooses it and why, or leave --model out to follow the recommendation");
    }
    return Optional.of(new ModelChoice(modelId(), by, reason));
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
