/* stead-statement-chart.h - a statement as steps: from what was there, by what came and
 * went, to what is there.
 */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-statement-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STATEMENT_CHART (stead_statement_chart_get_type ())
G_DECLARE_FINAL_TYPE (SteadStatementChart, stead_statement_chart, STEAD, STATEMENT_CHART, GtkBox)

GtkWidget *stead_statement_chart_new (void);
/* @answer: must outlive the chart, or the next call */
void       stead_statement_chart_set (SteadStatementChart        *self,
                                      const SteadStatementAnswer *answer,
                                      SteadStatementPart          part);

G_END_DECLS
