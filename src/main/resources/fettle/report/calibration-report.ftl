<#ftl output_format="XHTML">
<#macro facts list>
<dl class="facts">
<#list list as fact>
<dt>${fact.label}</dt><dd>${fact.value}</dd>
</#list>
</dl>
</#macro>
<#macro finding row style>
<div class="finding ${style}">
<p class="ask">${row.question?has_content?then(row.question, row.check)}</p>
<p><#if row.missing><b>Data missing.</b> </#if>${row.message}</p>
<p class="small">${row.check}<#if row.place?has_content> · ${row.place}</#if><#if row.citation?has_content> · ${row.citation}</#if></p>
<#if row.remedy?has_content><p class="small">To do: ${row.remedy}</p></#if>
</div>
</#macro>
<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" lang="en" xml:lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta name="color-scheme" content="light dark"/>
<meta name="generator" content="${program}"/>
<title>${head.title} – calibration curve report (${head.state})</title>
<style>
<#include "report.css" parse=false>
@page { @bottom-left { content: "${head.pageMark}"; font: 7pt Arial, sans-serif; color: #5b6875; } @bottom-right { content: counter(page) " / " counter(pages); font: 7pt Arial, sans-serif; color: #5b6875; } }
</style>
</head>
<body>
<#if head.watermark?has_content>
<div class="watermark<#if (head.watermark?length > 10)> long</#if>" aria-hidden="true"><span>${head.watermark}</span></div>
</#if>
<header>
<p class="kicker">Calibration curve report</p>
<h1>${head.title} <span class="state<#if head.state != "released"> draft</#if>">${head.state}</span></h1>
<p class="subtitle">${head.subtitle}</p>
<#if head.simulated>
<p class="simulated">The readings of this report are simulated in an invented laboratory. They must never be used for a part.</p>
</#if>
<div class="summary">
<dl class="facts">
<dt>Verdict of the checks</dt><dd class="verdict ${head.verdictClass}">${head.verdict}</dd>
<#list head.summary as fact>
<dt>${fact.label}</dt><dd>${fact.value}</dd>
</#list>
<dt>Fingerprint</dt><dd><span class="hash">${shortFingerprint}</span></dd>
<dt>Date</dt><dd>${date}</dd>
</dl>
</div>
<#if head.state != "released"><p class="small">The state of this curve is “${head.state}”. Only a released curve may serve for results.</p></#if>
</header>

<section id="identity" class="numbered">
<h2>Identity</h2>
<@facts identity.facts/>
<#if identity.steps?has_content>
<h3>Who has answered for it</h3>
<div class="scroll"><table>
<thead><tr><th>Step</th><th>Person</th><th>Day</th><th>Reason</th></tr></thead>
<tbody>
<#list identity.steps as step>
<tr><td>${step.step}</td><td class="t">${step.person}</td><td class="d">${step.on}</td><td class="t">${step.reason}</td></tr>
</#list>
</tbody></table></div>
</#if>
<h3>Policy and decision rule</h3>
<#if identity.examplePolicy>
<p class="small reason">This policy is an example. Its limits must be checked against the laboratory’s own copies of the standards before anybody relies on them.</p>
</#if>
<@facts identity.policy/>
<#if identity.limits?has_content>
<div class="scroll"><table>
<thead><tr><th>Limit of check</th><th class="n">Value</th><th>Origin</th><th>Entered by, on</th></tr></thead>
<tbody>
<#list identity.limits as limit>
<tr><td>${limit.check}</td><td class="n">${limit.value}</td><td class="t">${limit.citation}</td><td class="t">${limit.enteredBy}</td></tr>
</#list>
</tbody></table></div>
</#if>
</section>

<section id="range" class="numbered">
<h2>Range of validity</h2>
<#if range??>
<p>${range.statement}</p>
<div class="scroll"><table>
<thead><tr><th></th><th class="n">${range.responseHeading}</th><th class="n">${range.hardnessHeading}</th><th class="n">U of the whole curve</th><#if range.hasTarget><th class="n">Target for U</th></#if><th>Ends because of</th></tr></thead>
<tbody>
<#list range.rows as row>
<tr><td>${row.place}</td><td class="n">${row.response}</td><td class="n">${row.hardness}</td><td class="n">${row.simultaneous}</td><#if range.hasTarget><td class="n">${row.target}</td></#if><td class="w">${row.limitedBy}</td></tr>
</#list>
</tbody></table></div>
<p class="small">Hardness with the expanded uncertainty of the curve at that response alone; beside it the half-width that holds for all responses of the range at once. Both for 95 %, both without the scatter of a result on a test piece.</p>
<#else>
<p>There is no curve, hence no range: none of the models qualifies by itself, and nobody has chosen one. The reasons stand under Candidate models.</p>
</#if>
</section>

<section id="blocks" class="numbered">
<h2>Reference blocks</h2>
<div class="scroll"><table>
<thead><tr><th>Block</th><th>Role</th><th class="n">${blocks.certifiedHeading}</th><th class="n">k</th><th>Certificate</th><th>Bench machine</th><th class="n">${blocks.sharedHeading}</th><th>Valid until</th><th class="n">n</th><th class="n">${blocks.meanHeading}</th><th class="n">${blocks.deviationHeading}</th></tr></thead>
<tbody>
<#list blocks.rows as row>
<tr><td class="t"><b>${row.block}</b><#if row.origin?has_content><span class="sub">${row.origin}</span></#if></td><td>${row.role}</td><td class="n">${row.certified}</td><td class="n">${row.factor}</td><td class="t">${row.certificate}<#if row.certifiedBy?has_content><span class="sub">${row.certifiedBy}</span></#if></td><td class="t">${row.machine}</td><td class="n">${row.shared}</td><td class="d<#if row.ended> bad</#if>">${row.validUntil}<#if row.ended><span class="sub">ended</span></#if></td><td class="n">${row.count}</td><td class="n">${row.mean}</td><td class="n">${row.deviation}</td></tr>
</#list>
</tbody></table></div>
<p class="small">U expanded uncertainty of the certified value with its coverage factor k; shared u the part of its standard uncertainty common to all blocks of one bench machine; n readings kept; s standard deviation of a single reading over all runs.</p>
</section>

<section id="readings" class="numbered">
<h2>Readings</h2>
<p><#list readings.sentences as sentence>${sentence}<#sep> </#sep></#list></p>
<#if readings.marks?has_content>
<p class="small">Marks: <#list readings.marks as mark>${mark.label} ${mark.value}<#sep>; </#sep></#list>; vermilion cross a reading left out, at the edge where it lies beyond the scale. Bars: means of the runs. Vertical: deviation from the block’s mean in ${readings.scale}, one scale for all blocks. Horizontal: order of reading, with a gap between runs.</p>
<#else>
<p class="small">Vermilion cross: a reading left out, at the edge where it lies beyond the scale. Bars: means of the runs. Vertical: deviation from the block’s mean in ${readings.scale}, one scale for all blocks. Horizontal: order of reading, with a gap between runs.</p>
</#if>
<div class="strips">
<#list readings.strips as strip>
<figure><figcaption><b>${strip.block}</b> ${strip.caption}</figcaption>${strip.svg}</figure>
</#list>
</div>
<h3>Readings left out</h3>
<#if readings.exclusions?has_content>
<div class="scroll"><table>
<thead><tr><th>Block</th><th>File and line</th><th>Run, operator</th><th class="n">${readings.responseHeading}</th><th class="n">From the mean</th><th>Reason</th><th>By, on</th></tr></thead>
<tbody>
<#list readings.exclusions as row>
<tr><td class="t">${row.block}</td><td class="t">${row.place}</td><td class="t">${row.run}</td><td class="n">${row.response}</td><td class="n">${row.difference}</td><td class="t">${row.reason}</td><td class="t">${row.by}<span class="sub">${row.on}</span></td></tr>
</#list>
</tbody></table></div>
<#else>
<p>None: every reading counts.</p>
</#if>
</section>

<section id="scatter" class="numbered">
<h2>Scatter of the responses</h2>
<ul>
<#list scatter as sentence>
<li>${sentence}</li>
</#list>
</ul>
</section>

<section id="candidates" class="numbered">
<h2>Candidate models</h2>
<div class="scroll"><table>
<thead><tr><th>Model</th><th class="n">p</th><th class="n">χ² (df)</th><th class="n">P</th><th class="n">Γ</th><th class="n">AICc</th><th class="n">${candidates.errorHeading}</th><th class="n">${candidates.scatterHeading}</th><th>Slope</th><th>Remark</th></tr></thead>
<tbody>
<#list candidates.rows as row>
<tr class="<#if row.mark == "curve">taken<#elseif row.refused>refused</#if>"><td>${row.model}<#if row.mark?has_content><span class="sub">${row.mark}</span></#if></td><td class="n">${row.parameters}</td><td class="n">${row.chiSquared}</td><td class="n">${row.probability}</td><td class="n">${row.gamma}</td><td class="n">${row.aicc}</td><td class="n">${row.leaveOneOut}</td><td class="n">${row.scatter}</td><td>${row.monotone}</td><td class="w">${row.remark}</td></tr>
</#list>
</tbody></table></div>
<p class="small">p parameters; χ² without between-block scatter, its degrees of freedom df and the probability P of a larger one; Γ largest weighted deviation; AICc information criterion with τ counted as a parameter; leave-one-out rms of the errors with which the others predict each block; τ between-block scatter; slope whether the curve is strictly monotone over the blocks.</p>
<p>${candidates.reason}</p>
<#if candidates.choice?has_content><p>${candidates.choice}</p></#if>
</section>

<section id="curve" class="numbered">
<h2>The curve</h2>
<#if curve??>
<p class="formula">${curve.formula}</p>
<p class="small">${curve.model}; ${curve.where}.</p>
<div class="scroll"><table>
<thead><tr><th>Coefficient</th><th class="n">Value</th><th class="n">Standard uncertainty</th><th class="n">All digits</th></tr></thead>
<tbody>
<#list curve.coefficients as row>
<tr><td>${row.name}</td><td class="n">${row.value}</td><td class="n">${row.standardUncertainty}</td><td class="n">${row.full}</td></tr>
</#list>
</tbody></table></div>
<p class="small">Coefficients are correlated: rounded values are for reading, and their uncertainties do not add up to that of the curve. Compute with all digits; the covariance is in the curve file.</p>
<figure>${curve.curveChart}
<figcaption>Curve over its valid range (dotted lines) with the band for one response and the band for the whole curve at once, 95 % each. Bars on blocks: expanded uncertainty of the certified value; two standard uncertainties of the mean response.</figcaption></figure>
<figure>${curve.deviationChart}
<figcaption>${curve.deviationCaption}</figcaption></figure>
<h3>Each block predicted by the others</h3>
<div class="scroll"><table>
<thead><tr><th>Block</th><th class="n">${curve.certifiedHeading}</th><th class="n">${curve.predictedHeading}</th><th class="n">${curve.errorHeading}</th><th class="n">${curve.uncertaintyHeading}</th><th class="n">z</th><th></th></tr></thead>
<tbody>
<#list curve.predicted as row>
<tr><td class="t">${row.block}</td><td class="n">${row.certified}</td><td class="n">${row.predicted}</td><td class="n">${row.error}</td><td class="n">${row.standardUncertainty}</td><td class="n<#if row.large> bad</#if>">${row.z}</td><td>${row.remark}</td></tr>
</#list>
</tbody></table></div>
<p class="small">Each block left out in turn and predicted by a curve through the others; error = predicted − certified, u its standard uncertainty, z their ratio. Beyond 2.5 look for a wrong certificate, exchanged blocks or a piece that is not of the family.</p>
<h3>Between-block scatter</h3>
<ul>
<#list curve.scatter as sentence>
<li>${sentence}</li>
</#list>
</ul>
<#else>
<p>No curve: no model is recommended and none was chosen.</p>
<figure>${blocksChart}
<figcaption>The blocks. Bars: expanded uncertainty of the certified value; two standard uncertainties of the mean response.</figcaption></figure>
</#if>
</section>

<section id="budget" class="numbered">
<h2>Uncertainty budget</h2>
<#if budget??>
<p>For a result on a piece of the family: the mean of ${budget.readings} readings in one run, with the repeatability of this campaign. Standard uncertainties in ${budget.unit}.</p>
<div class="scroll"><table>
<thead><tr><th>Source</th><th>Arises in</th><#list budget.places as place><th class="n">at ${place}</th></#list></tr></thead>
<tbody>
<#list budget.lines as line>
<tr><td>${line.name}</td><td>${line.part}</td><#if line.present><#list line.figures as figure><td class="n">${figure}</td></#list><#else><td class="absent" colspan="3">absent: nothing is stated or known of it</td></#if></tr>
</#list>
</tbody>
<tbody class="totals">
<#list budget.totals as line>
<tr><td>${line.name}</td><td>${line.part}</td><#list line.figures as figure><td class="n">${figure}</td></#list></tr>
</#list>
</tbody></table></div>
<#if budget.absent?has_content>
<p class="small">Absent and therefore counted as zero: <#list budget.absent as name>${name}<#sep>, </#sep></#list>. Where any of them matters, the uncertainty above is too small.</p>
</#if>
<figure>${budget.chart}
<figcaption>What makes up the squared standard uncertainty of the result along the range. Numbers in the areas are those of the legend.</figcaption></figure>
<#else>
<p>No curve, hence no budget.</p>
</#if>
</section>

<section id="check-blocks" class="numbered">
<h2>Check blocks</h2>
<#if !checkBlocks??>
<p>No curve, hence nothing to hold the check blocks against.</p>
<#elseif !checkBlocks.rows?has_content>
<p>None: no block was kept out of the fit. Nothing independent speaks for this curve; the leave-one-out errors above are no substitute.</p>
<#else>
<div class="scroll"><table>
<thead><tr><th>Block</th><th class="n">Certified ± U / ${checkBlocks.unit}</th><th class="n">From the curve</th><th class="n">Deviation</th><th class="n">U of it</th><th class="n">E<sub>n</sub></th><th class="n">Permissible error</th><th>Verdict</th><th class="n">P of conformity</th></tr></thead>
<tbody>
<#list checkBlocks.rows as row>
<tr><td class="t">${row.block}<#if row.status?has_content><span class="sub stop">${row.status}</span></#if></td><td class="n">${row.certified}</td><td class="n">${row.fitted}</td><td class="n">${row.deviation}</td><td class="n">${row.expandedUncertainty}</td><td class="n<#if row.disagrees> bad</#if>">${row.en}</td><td class="n">${row.permissible}</td><td class="${row.verdictClass}">${row.verdict}</td><td class="n">${row.probability}</td></tr>
</#list>
</tbody></table></div>
<p class="small">Deviation = from the curve − certified, with the half-width U of its 95 % interval, from which errors that curve and block share are removed; E<sub>n</sub> their ratio (ISO 13528). All hardnesses in ${checkBlocks.unit}. P probability that the true deviation lies within the permissible error (JCGM 106:2012).<#if !checkBlocks.hasLimits> The policy states no permissible error, so there is no verdict.<#elseif !checkBlocks.hasRule> The policy states no decision rule, so there is no verdict.</#if></p>
</#if>
</section>

<section id="findings" class="numbered">
<h2>Findings</h2>
<#if findings.none>
<p>No acceptance check was run for this report.</p>
<#else>
<#if !findings.open?has_content><p>Every check passed.</p></#if>
<#list findings.open as group>
<h3 class="${group.style}">${group.title} (${group.rows?size})</h3>
<#list group.rows as row><@finding row group.style/></#list>
</#list>
<#if findings.passed?has_content>
<details><summary>Passed (${findings.answers})</summary></details>
<div class="passed">
<#list findings.passed as check>
<h4>${check.first.question?has_content?then(check.first.question, check.first.check)}</h4>
<p class="origin"><#if check.first.question?has_content>${check.first.check}</#if><#if check.first.citation?has_content>: ${check.first.citation}</#if></p>
<ul>
<#list check.answers as row>
<li>${row.message}</li>
</#list>
</ul>
</#list>
</div>
</#if>
</#if>
</section>

<section id="cautions" class="numbered">
<h2>Cautions</h2>
<ol>
<#list cautions as caution>
<li>${caution}</li>
</#list>
</ol>
</section>

<section id="verify" class="numbered">
<h2>To recompute and verify</h2>
<p>The curve follows from the files below and nothing else. In the laboratory folder, <code>fettle recompute ${dossier}<#if version?has_content>@${version}</#if></code> computes it again and compares. A file is the one meant here if its SHA-256 is the one printed. This report relates only to the items listed in it.</p>
<dl class="facts">
<dt>SHA-256 of the curve file</dt><dd><span class="hash">${fingerprint}</span></dd>
<dt>Made by</dt><dd>${program}</dd>
</dl>
<#if inputs?has_content>
<div class="scroll"><table>
<thead><tr><th>Input</th><th>SHA-256</th></tr></thead>
<tbody>
<#list inputs as input>
<tr><td class="t">${input.name}</td><td class="t hash">${input.sha256}</td></tr>
</#list>
</tbody></table></div>
<#else>
<p>No input files were named to this report.</p>
</#if>
</section>
<p class="end">End of the report on ${head.title} · ${shortFingerprint}</p>
</body>
</html>
