/* stead-month-figure.h - columns over months, as a figure on pages. */
#pragma once

#include "draw/stead-month-chart.h"
#include "paper/stead-pages.h"

G_BEGIN_DECLS

/**
 * stead_month_figure_add:
 * @series: names and values are copied; of more than %STEAD_MONTHS_MAX the last ones
 * @currency: (nullable): for money, ISO 4217
 */
void stead_month_figure_add (SteadPages             *pages,
                             const SteadMonthSeries *series,
                             const char             *currency);

G_END_DECLS
