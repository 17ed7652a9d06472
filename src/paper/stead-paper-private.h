/* stead-paper-private.h - the makers of the single documents, and what they share. */
#pragma once

#include "answer/stead-cvp-labels.h"
#include "answer/stead-log-answer.h"
#include "draw/stead-cvp-chart.h"
#include "paper/stead-pages.h"
#include "paper/stead-paper.h"

G_BEGIN_DECLS

/* Each: @of is the product's name or NULL for the first; the pages come settled. */
SteadPages *stead_cost_paper_new  (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_build_proposal_new (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error);
SteadPages *stead_build_shopping_new (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error);
SteadPages *stead_build_donor_new    (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error);
SteadPages *stead_build_poster_new   (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error);
/* The school year so far, or the days of @options. */
SteadPages *stead_season_paper_new (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: the name of a packet. */
SteadPages *stead_packet_paper_new (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_price_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: the code of a lot. */
SteadPages *stead_trace_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: the name of a batch. */
SteadPages *stead_batch_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* Which price a product has, and its scenarios side by side; @of: its name. */
SteadPages *stead_choice_paper_new (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_what_if_paper_new (SteadStore               *store,
                                     const char               *of,
                                     const SteadPaperOptions  *options,
                                     GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* Of all products; @of: nothing. */
SteadPages *stead_price_list_paper_new (SteadStore               *store,
                                        const char               *of,
                                        const SteadPaperOptions  *options,
                                        GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_costs_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_how_sure_paper_new (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_together_paper_new (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @names: (element-type utf8): products that stand in no table, and why. */
void        stead_paper_add_left_out (SteadPages *pages, GPtrArray *names);
SteadPages *stead_best_use_paper_new (SteadStore               *store,
                                      const char               *of,
                                      const SteadPaperOptions  *options,
                                      GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: a batch of which several products come, or NULL for the first. */
SteadPages *stead_joint_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* The run sheet of a kitchen batch; @of: its name. */
SteadPages *stead_run_paper_new   (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* A checklist to be filled in by hand, as it is filled in, and its pots that cool; @of: its name. */
SteadPages *stead_check_paper_new_blank (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_check_paper_new       (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_cooling_paper_new     (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* Of the days of @options, or of the last 31: holding hot and cold, thermometers, what was done. */
SteadPages *stead_hold_paper_new        (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_thermometer_paper_new (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_corrective_paper_new  (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: the code of a lot. */
SteadPages *stead_recall_paper_new      (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* A poster: the limits of the kitchen's own foods. */
SteadPages *stead_limit_card_paper_new  (SteadStore               *store,
                                         const char               *of,
                                         const SteadPaperOptions  *options,
                                         GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_limit_card_paper_new_english (SteadStore               *store,
                                                const char               *of,
                                                const SteadPaperOptions  *options,
                                                GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_limit_card_paper_new_spanish (SteadStore               *store,
                                                const char               *of,
                                                const SteadPaperOptions  *options,
                                                GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* A blank sheet for the bench; @of: the name of a flock. */
SteadPages *stead_grading_paper_new (SteadStore               *store,
                                     const char               *of,
                                     const SteadPaperOptions  *options,
                                     GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: the code of a lot. */
SteadPages *stead_label_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_chart_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* @of: a part of the farm, or NULL for all of it; an account, or NULL for all; nothing. */
SteadPages *stead_statement_paper_new (SteadStore               *store,
                                       const char               *of,
                                       const SteadPaperOptions  *options,
                                       GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_cash_paper_new      (SteadStore               *store,
                                       const char               *of,
                                       const SteadPaperOptions  *options,
                                       GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_count_paper_new     (SteadStore               *store,
                                       const char               *of,
                                       const SteadPaperOptions  *options,
                                       GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* @of: a sale day. */
SteadPages *stead_sale_paper_new (SteadStore               *store,
                                  const char               *of,
                                  const SteadPaperOptions  *options,
                                  GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_sign_paper_new (SteadStore               *store,
                                  const char               *of,
                                  const SteadPaperOptions  *options,
                                  GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_tally_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_float_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_order_paper_new (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPages *stead_thanks_paper_new (SteadStore               *store,
                                    const char               *of,
                                    const SteadPaperOptions  *options,
                                    GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* The days of @options, or this week; @of: nothing. */
SteadPages *stead_hours_week_paper_new   (SteadStore               *store,
                                          const char               *of,
                                          const SteadPaperOptions  *options,
                                          GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
/* @of: a person; of the days of @options, or of the school year. */
SteadPages *stead_hours_person_paper_new (SteadStore               *store,
                                          const char               *of,
                                          const SteadPaperOptions  *options,
                                          GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same as tables: each entry behind the statements; the whole book. */
SteadLogAnswer *stead_statement_paper_log (SteadStore               *store,
                                           const char               *of,
                                           const SteadPaperOptions  *options,
                                           GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadLogAnswer *stead_cash_paper_log      (SteadStore               *store,
                                           const char               *of,
                                           const SteadPaperOptions  *options,
                                           GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* The break-even chart of a product alone, with its sentence as the text beside it. */
GBytes *stead_chart_picture (SteadStore               *store,
                             const char               *of,
                             const SteadPaperOptions  *options,
                             SteadFormat               format,
                             GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* The product and the period that a paper is about; the first product, and twelve weeks, where
 * nothing is said of them. */
gboolean stead_paper_find_product (SteadStore               *store,
                                   const char               *of,
                                   const SteadPaperOptions  *options,
                                   gint64                   *out_id,
                                   SteadPeriod              *out_period,
                                   GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

SteadPriceAnswer *stead_paper_read_price (SteadStore               *store,
                                          const char               *of,
                                          const SteadPaperOptions  *options,
                                          GError                  **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCostAnswer  *stead_paper_read_cost  (SteadStore               *store,
                                          const char               *of,
                                          const SteadPaperOptions  *options,
                                          GError                  **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Dec 3, 2025 to Feb 24, 2026 (last 12 weeks)" */
char *stead_paper_period (const SteadCostAnswer *cost) G_GNUC_WARN_UNUSED_RESULT;

/* Money of the farm; rounded to whole minor units first where it is a double. */
char *stead_paper_money  (const SteadCostAnswer *cost,
                          gint64                 cents) G_GNUC_WARN_UNUSED_RESULT;
char *stead_paper_moneyf (const SteadCostAnswer *cost,
                          double                 cents) G_GNUC_WARN_UNUSED_RESULT;

/* The break-even chart as a figure on pages. */
typedef struct
{
  SteadCvp        cvp;
  SteadCvpLabels *labels;
  char           *currency;
} SteadCvpFigure;

SteadCvpFigure *stead_cvp_figure_new   (const SteadPriceAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
void            stead_cvp_figure_free  (gpointer data);
void            stead_cvp_figure_paint (cairo_t     *cr,
                                        SteadScheme  scheme,
                                        double       font_size,
                                        double       width,
                                        double       height,
                                        const SteadCvpFigure *figure);
/* A SteadFigurePaint for one of them. */
void            stead_cvp_figure_print (cairo_t  *cr,
                                        double    width,
                                        double    height,
                                        gpointer  data);

G_END_DECLS
