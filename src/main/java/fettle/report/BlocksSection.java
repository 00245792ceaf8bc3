package fettle.report;

import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The reference blocks with their certificates and mean responses. */
final class BlocksSection {
  private BlocksSection() {}

  /**
   * What the template shows.
   *
   * @param certifiedHeading heading of the certified values
   * @param sharedHeading heading of the shared uncertainties
   * @param meanHeading heading of the mean responses
   * @param deviationHeading heading of the standard deviations
   * @param rows one a block, in order of certified hardness
   */
  public record View(
      String certifiedHeading,
      String sharedHeading,
      String meanHeading,
      String deviationHeading,
      List<Row> rows) {}

  /**
   * One block.
   *
   * @param block id
   * @param origin heat and product form
   * @param role role here
   * @param certified certified value with expanded uncertainty
   * @param factor coverage factor of the certificate
   * @param certificate number of the certificate
   * @param certifiedBy who certified
   * @param machine bench machine
   * @param shared shared standard uncertainty
   * @param validUntil end of validity
   * @param ended whether it lies before the date of the report
   * @param count kept readings
   * @param mean mean response
   * @param deviation standard deviation of a reading
   */
  public record Row(
      String block,
      String origin,
      String role,
      String certified,
      String factor,
      String certificate,
      String certifiedBy,
      String machine,
      String shared,
      String validUntil,
      boolean ended,
      String count,
      String mean,
      String deviation) {}

  static View of(ReportContent content) {
    Analysis analysis = content.analysis();
    Units units = Units.of(analysis.campaign().dossier().identity());
    List<Row> rows = new ArrayList<>();
    for (BlockResponse block : analysis.blocks()) {
      rows.add(row(block, analysis, content.date()));
    }
    return new View(
        units.hardnessHeading("Certified ±" + Figures.NBSP + "U"),
        units.hardnessHeading("shared u"),
        units.responseHeading("Mean response"),
        units.responseHeading("s"),
        rows);
  }

  private static Row row(BlockResponse response, Analysis analysis, LocalDate date) {
    Certificate certificate = response.certificate();
    ReferenceBlock block = response.block();
    boolean otherScale =
        !certificate.scale().equals(analysis.campaign().dossier().identity().scale());
    List<String> origin = new ArrayList<>();
    block.heat().ifPresent(heat -> origin.add("heat " + heat));
    block.productForm().ifPresent(origin::add);
    String certified = Figures.pair(certificate.certified(), certificate.expandedUncertainty());
    return new Row(
        block.id(),
        String.join(", ", origin),
        response.role().id(),
        otherScale ? certified + Figures.NBSP + certificate.scale() : certified,
        Figures.given(certificate.coverageFactor()),
        certificate.number().orElse("–"),
        certificate.certifiedBy().orElse(""),
        certificate.referenceMachine().orElse("–"),
        certificate.sharedUncertainty().isPresent()
            ? Figures.uncertainty(certificate.sharedUncertainty().getAsDouble())
            : "–",
        certificate.validUntil().map(LocalDate::toString).orElse("–"),
        !certificate.validOn(date),
        Integer.toString(response.count()),
        Figures.value(response.mean(), ChartPoints.halfWidthOfMean(response, analysis.variance())),
        response.count() > 1 ? Figures.significant(response.standardDeviation(), 2) : "–");
  }
}
