package fettle.calibration;

import fettle.block.Certificate;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.policy.TypeB;
import fettle.refusal.InputRefusedException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The fitting blocks as points with the whole V_r and V_h, and the same split by source.
 *
 * <pre>
 *   V_r = diag(ν/(ν−2) σ_e²/n_i + σ_ab² Σ_k z_ik²) + Σ_k σ_a² z_k z_kᵀ + Σ_o σ_o² z_o z_oᵀ
 *   V_h = diag(u_i² − Σ_s c_s,i² + w_i²) + Σ_s c_s c_sᵀ
 * </pre>
 *
 * <p>z_ik is the share of block i's readings in run k, times the response where effects are
 * relative. The factor ν/(ν−2) is the variance of a t variable: a pooled standard deviation known
 * from few readings counts for more (JCGM 101:2008, 6.4.9.2). Non-uniformity is the difference
 * between the certified mean and the mean over the places read; local scatter that shows between
 * readings is in σ_e already.
 *
 * @param blocks fitting blocks, in order of certified hardness
 * @param points the points
 * @param variance the scatter they rest on
 * @param machines names of the shared sources, in the order of the hardness effects
 * @param operators operators, in the order of the response effects after the runs
 * @param runLoadings for each run, the effect of size 1 on every block
 * @param repeatabilityVariance first part of the independent response variance, by block
 * @param interactionVariance second part, by block
 * @param certificateVariance independent part of the certificates, by block
 * @param nonUniformityVariance w_i², by block
 * @param nonUniformityStated whether any certificate states it
 */
record CampaignPoints(
    List<BlockResponse> blocks,
    Points points,
    ResponseVariance variance,
    List<String> machines,
    List<String> operators,
    List<double[]> runLoadings,
    double[] repeatabilityVariance,
    double[] interactionVariance,
    double[] certificateVariance,
    double[] nonUniformityVariance,
    boolean nonUniformityStated) {

  static CampaignPoints of(
      List<BlockResponse> blocks, ResponseVariance variance, TypeB typeB, String dossier)
      throws FitFailedException {
    int m = blocks.size();
    double[] responses = new double[m];
    double[] hardnesses = new double[m];
    double[] repeatability = new double[m];
    double[] interaction = new double[m];
    double[] certificates = new double[m];
    double[] nonUniformity = new double[m];
    boolean stated = false;
    Map<String, double[]> machines = new LinkedHashMap<>();
    TreeSet<String> operators = new TreeSet<>();
    double nu = variance.degreesOfFreedom();
    double inflation = nu > 2 ? nu / (nu - 2) : 3;
    for (int i = 0; i < m; i++) {
      BlockResponse block = blocks.get(i);
      Certificate certificate = block.certificate();
      responses[i] = block.mean();
      hardnesses[i] = certificate.certified();
      double size = variance.sizeAt(block.mean());
      repeatability[i] = inflation * square(variance.repeatability() * size) / block.count();
      for (String run : variance.runs()) {
        interaction[i] += square(variance.blockRun() * size * block.shareOfRun(run));
      }
      double u = certificate.standardUncertainty();
      double shared = certificate.sharedUncertainty().orElse(0);
      if (shared > u) {
        throw new InputRefusedException(
            "The shared uncertainty "
                + shared
                + " of block "
                + block.block().id()
                + " is larger than its whole standard uncertainty "
                + u
                + ".",
            "dossier " + dossier,
            "u_shared of at most expanded_uncertainty / coverage_factor",
            "correct the certificate of the block");
      }
      certificates[i] = u * u - shared * shared;
      if (certificate.referenceMachine().isPresent() && shared > 0) {
        machines.computeIfAbsent(certificate.referenceMachine().get(), name -> new double[m])[i] =
            shared;
      } else {
        certificates[i] = u * u;
      }
      stated |= certificate.nonUniformity().isPresent();
      nonUniformity[i] = square(certificate.nonUniformity().orElse(0));
      operators.addAll(block.readingsPerOperator().keySet());
    }
    List<double[]> runLoadings = new ArrayList<>();
    List<double[]> responseEffects = new ArrayList<>();
    for (String run : variance.runs()) {
      double[] loading = new double[m];
      for (int i = 0; i < m; i++) {
        loading[i] = blocks.get(i).shareOfRun(run) * variance.sizeAt(responses[i]);
      }
      runLoadings.add(loading);
      if (variance.run() > 0) {
        responseEffects.add(scaled(loading, variance.run()));
      }
    }
    List<String> named = new ArrayList<>();
    if (typeB.operator().orElse(0) > 0) {
      for (String operator : operators) {
        double[] loading = new double[m];
        for (int i = 0; i < m; i++) {
          loading[i] = blocks.get(i).shareOfOperator(operator) * Math.abs(responses[i]);
        }
        responseEffects.add(scaled(loading, typeB.operator().orElse(0)));
        named.add(operator);
      }
    }
    double[] responseVariance = sum(repeatability, interaction);
    double[] hardnessVariance = sum(certificates, nonUniformity);
    Points points =
        Points.of(
            responses,
            hardnesses,
            responseVariance,
            hardnessVariance,
            responseEffects.toArray(new double[0][]),
            machines.values().toArray(new double[0][]));
    return new CampaignPoints(
        List.copyOf(blocks),
        points,
        variance,
        List.copyOf(machines.keySet()),
        List.copyOf(named),
        List.copyOf(runLoadings),
        repeatability,
        interaction,
        certificates,
        nonUniformity,
        stated);
  }

  private static double[] scaled(double[] values, double factor) {
    double[] result = values.clone();
    for (int i = 0; i < result.length; i++) {
      result[i] *= factor;
    }
    return result;
  }

  private static double[] sum(double[] a, double[] b) {
    double[] result = a.clone();
    for (int i = 0; i < result.length; i++) {
      result[i] += b[i];
    }
    return result;
  }

  private static double square(double x) {
    return x * x;
  }
}
