# Writes the points of chi-square and F that tests/outside/balance/distributions.test.ts compares with.
# Run: Rscript tests/outside/balance/distributions.R
for (d in c(2, 4, 6, 10, 20)) cat(sprintf("chi2 %d %.6f\n", d, qchisq(0.99, d)))
for (d in c(2, 4, 6, 10)) cat(sprintf("f %d %.6f %.6f\n", d, qf(0.95, 2, d), qf(0.9975, 2, d)))
