# Reference values for tests/published/calibration.test.ts. R 4.2.2 (Debian 12), base and stats only.
# Run: Rscript calibration.R . The plots are invented. Plots over two doses enter by their equivalent even dose at the fitted k,
# found here by iterating glm itself; u = -log(sum(share * exp(-k * dose))) / k.
options(digits = 15)
cat(R.version.string, "\n")
y    <- c(0.02, 0.10, 0.18, 0.31, 0.27, 0.44, 0.52, 0.05, 0.36, 0.61, 0.00, 0.23)
area <- c(1.00, 0.25, 0.50, 1.00, 1.00, 0.25, 0.50, 1.00, 1.00, 0.50, 0.25, 1.00)
d1   <- c(0.05, 0.10, 0.20, 0.40, 0.30, 0.60, 0.80, 0.10, 0.45, 0.90, 0.04, 0.25)
d2   <- c(0.05, 0.05, 0.20, 0.40, 0.60, 0.60, 0.80, 0.00, 0.45, 1.40, 0.04, 0.25)
part <- c(1.00, 0.60, 1.00, 1.00, 0.70, 1.00, 1.00, 0.50, 1.00, 0.80, 1.00, 1.00)
u <- part * d1 + (1 - part) * d2
k <- 0
repeat {
  fit <- glm(y ~ 1 + offset(log(u)), family = quasibinomial(link = "cloglog"), weights = area,
             control = glm.control(epsilon = 1e-14, maxit = 200))
  now <- exp(coef(fit)[[1]])
  if (abs(now - k) < 1e-14 * now) break
  k <- now
  u <- -log(part * exp(-k * d1) + (1 - part) * exp(-k * d2)) / k
}
s <- summary(fit)
cat("k", format(k), "\n")
cat("log se", format(s$coefficients[1, 2]), "\n")
cat("dispersion", format(s$dispersion), "df", fit$df.residual, "\n")
t <- qt(0.975, fit$df.residual)
cat("interval", format(exp(coef(fit)[[1]] + c(-1, 1) * t * s$coefficients[1, 2])), "\n")
cat("doses", format(u), "\n")
cat("fitted", format(fitted(fit)), "\n")
cat("rstandard pearson", format(rstandard(fit, type = "pearson")), "\n")
