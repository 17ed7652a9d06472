/* stead-paper.c - the documents by name, and their pages as an object. */
#include "config.h"

#include "answer/stead-agenda-answer.h"
#include "answer/stead-log-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-money.h"
#include "paper/stead-csv.h"
#include "paper/stead-output.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-pdf.h"
#include "paper/stead-workbook.h"
#include "paper/stead-xlsx.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SteadPaper
{
  GObject     parent_instance;
  SteadPages *pages;
};

G_DEFINE_FINAL_TYPE (SteadPaper, stead_paper, G_TYPE_OBJECT)

typedef SteadPages     *(*PagesFunc) (SteadStore *, const char *, const SteadPaperOptions *, GError **);
typedef SteadLogAnswer *(*LogFunc)   (SteadStore *, const char *, const SteadPaperOptions *, GError **);

static SteadLogAnswer *
read_flock_log (SteadStore               *store,
                const char               *of,
                const SteadPaperOptions  *options,
                GError                  **error)
{
  gint64 flock_id;

  if (!stead_subject_flock (store, of, &flock_id, error))
    return NULL;
  return stead_log_answer_flock (store, flock_id, error);
}

static SteadLogAnswer *
read_fish_log (SteadStore               *store,
               const char               *of,
               const SteadPaperOptions  *options,
               GError                  **error)
{
  gint64 fish_id;

  if (!stead_subject_fish (store, of, &fish_id, error))
    return NULL;
  return stead_log_answer_fish (store, fish_id, error);
}

static SteadLogAnswer *
read_weighings (SteadStore               *store,
                const char               *of,
                const SteadPaperOptions  *options,
                GError                  **error)
{
  gint64 fish_id;

  if (!stead_subject_fish (store, of, &fish_id, error))
    return NULL;
  return stead_log_answer_weighings (store, fish_id, error);
}

static SteadLogAnswer *
read_cost_lines (SteadStore               *store,
                 const char               *of,
                 const SteadPaperOptions  *options,
                 GError                  **error)
{
  g_autoptr(SteadCostAnswer) cost = stead_paper_read_cost (store, of, options, error);

  return cost == NULL ? NULL : stead_log_answer_cost (store, cost, error);
}

#define PICTURES (STEAD_FORMAT_PNG | STEAD_FORMAT_SVG)
#define TABLES (STEAD_FORMAT_CSV | STEAD_FORMAT_XLSX)

static const SteadPaperKind kinds[] = {
  { "cost-sheet", N_("Cost sheet"), "product", STEAD_FORMAT_PDF },
  { "price-page", N_("Price and break-even"), "product", STEAD_FORMAT_PDF },
  { "break-even-chart", N_("Break-even chart"), "product", STEAD_FORMAT_PDF | PICTURES },
  { "which-price", N_("Which price"), "product", STEAD_FORMAT_PDF },
  { "scenarios", N_("Scenarios compared"), "product", STEAD_FORMAT_PDF },
  { "price-list", N_("Price list"), NULL, STEAD_FORMAT_PDF },
  { "costs-all", N_("Costs and prices of all products"), NULL, STEAD_FORMAT_PDF },
  { "break-even-all", N_("Break-even of all products"), NULL, STEAD_FORMAT_PDF },
  { "best-use", N_("Best use of what is scarce"), NULL, STEAD_FORMAT_PDF },
  { "shared-cost", N_("One cost, shared in several ways"), "batch", STEAD_FORMAT_PDF },
  { "how-sure", N_("How sure the season is"), NULL, STEAD_FORMAT_PDF },
  { "batch-card", N_("Batch card"), "batch", STEAD_FORMAT_PDF },
  { "run-sheet", N_("Run sheet"), "kitchen", STEAD_FORMAT_PDF },
  { "grading-sheet", N_("Grading sheet"), "flock", STEAD_FORMAT_PDF },
  { "checklist", N_("Food-safety checklist"), "checklist", STEAD_FORMAT_PDF },
  { "checklist-blank", N_("Food-safety checklist, to fill in by hand"), "checklist", STEAD_FORMAT_PDF },
  { "cooling-log", N_("Cooling log"), "checklist", STEAD_FORMAT_PDF },
  { "hold-log", N_("Hot and cold holding log"), NULL, STEAD_FORMAT_PDF },
  { "thermometer-log", N_("Thermometer check log"), NULL, STEAD_FORMAT_PDF },
  { "corrective-actions", N_("Corrective-action record"), NULL, STEAD_FORMAT_PDF },
  { "recall-report", N_("Recall report"), "lot", STEAD_FORMAT_PDF },
  { "limit-card", N_("Limit card of the kitchen, in English and Spanish"), NULL, STEAD_FORMAT_PDF },
  { "limit-card-english", N_("Limit card of the kitchen, in English"), NULL, STEAD_FORMAT_PDF },
  { "limit-card-spanish", N_("Limit card of the kitchen, in Spanish"), NULL, STEAD_FORMAT_PDF },
  { "labels", N_("Labels"), "lot", STEAD_FORMAT_PDF },
  { "flock-log", N_("Log of a flock"), "flock", TABLES },
  { "fish-log", N_("Log of a group of fish"), "fish", TABLES },
  { "weighings", N_("Weighings of fish"), "fish", TABLES },
  { "cost-lines", N_("Lines behind the cost"), "product", TABLES },
  { "trace", N_("One way back: the trace of a lot"), "lot", STEAD_FORMAT_PDF },
  { "statements", N_("Statements"), NULL, STEAD_FORMAT_PDF | TABLES },
  { "cash-book", N_("Cash book"), NULL, STEAD_FORMAT_PDF | TABLES },
  { "count-sheet", N_("Count and deposit"), NULL, STEAD_FORMAT_PDF },
  { "sale-plan", N_("Plan of a sale day"), "sale", STEAD_FORMAT_PDF },
  { "price-signs", N_("Price signs"), "sale", STEAD_FORMAT_PDF },
  { "tally-sheet", N_("Tally sheet"), "sale", STEAD_FORMAT_PDF },
  { "float-sheet", N_("Float and cash-up"), "sale", STEAD_FORMAT_PDF },
  { "order-list", N_("Order list"), "sale", STEAD_FORMAT_PDF },
  { "thank-you", N_("Thanks to the helpers"), "sale", STEAD_FORMAT_PDF },
  { "calendar", N_("Calendar of sale days and due work"), NULL, STEAD_FORMAT_ICS },
  { "season", N_("Season summary"), NULL, STEAD_FORMAT_PDF },
  { "workbook", N_("Workbook of the farm"), NULL, STEAD_FORMAT_XLSX },
  { "build-proposal", N_("Build proposal"), "build", STEAD_FORMAT_PDF },
  { "shopping-list", N_("Shopping list of a build"), "build", STEAD_FORMAT_PDF },
  { "donor-sheet", N_("Sheet for givers"), "build", STEAD_FORMAT_PDF },
  { "progress-poster", N_("Progress poster"), "build", STEAD_FORMAT_PDF },
  { "hours-week", N_("Hours of a week"), NULL, STEAD_FORMAT_PDF },
  { "hours-person", N_("Hours by activity"), "person", STEAD_FORMAT_PDF },
  { "packet", N_("Packet"), "packet", STEAD_FORMAT_PDF },
};

/* What makes each of them, in the same order. */
static const struct
{
  PagesFunc pages;
  LogFunc   log;
} makers[G_N_ELEMENTS (kinds)] = {
  { stead_cost_paper_new, NULL },
  { stead_price_paper_new, NULL },
  { stead_chart_paper_new, NULL },
  { stead_choice_paper_new, NULL },
  { stead_what_if_paper_new, NULL },
  { stead_price_list_paper_new, NULL },
  { stead_costs_paper_new, NULL },
  { stead_together_paper_new, NULL },
  { stead_best_use_paper_new, NULL },
  { stead_joint_paper_new, NULL },
  { stead_how_sure_paper_new, NULL },
  { stead_batch_paper_new, NULL },
  { stead_run_paper_new, NULL },
  { stead_grading_paper_new, NULL },
  { stead_check_paper_new, NULL },
  { stead_check_paper_new_blank, NULL },
  { stead_cooling_paper_new, NULL },
  { stead_hold_paper_new, NULL },
  { stead_thermometer_paper_new, NULL },
  { stead_corrective_paper_new, NULL },
  { stead_recall_paper_new, NULL },
  { stead_limit_card_paper_new, NULL },
  { stead_limit_card_paper_new_english, NULL },
  { stead_limit_card_paper_new_spanish, NULL },
  { stead_label_paper_new, NULL },
  { NULL, read_flock_log },
  { NULL, read_fish_log },
  { NULL, read_weighings },
  { NULL, read_cost_lines },
  { stead_trace_paper_new, NULL },
  { stead_statement_paper_new, stead_statement_paper_log },
  { stead_cash_paper_new, stead_cash_paper_log },
  { stead_count_paper_new, NULL },
  { stead_sale_paper_new, NULL },
  { stead_sign_paper_new, NULL },
  { stead_tally_paper_new, NULL },
  { stead_float_paper_new, NULL },
  { stead_order_paper_new, NULL },
  { stead_thanks_paper_new, NULL },
  { NULL, NULL },
  { stead_season_paper_new, NULL },
  { NULL, NULL },
  { stead_build_proposal_new, NULL },
  { stead_build_shopping_new, NULL },
  { stead_build_donor_new, NULL },
  { stead_build_poster_new, NULL },
  { stead_hours_week_paper_new, NULL },
  { stead_hours_person_paper_new, NULL },
  { stead_packet_paper_new, NULL },
};

const SteadPaperKind *
stead_paper_list (gsize *n_kinds)
{
  g_return_val_if_fail (n_kinds != NULL, NULL);
  *n_kinds = G_N_ELEMENTS (kinds);
  return kinds;
}

const SteadPaperKind *
stead_paper_find (const char *name)
{
  for (gsize i = 0; name != NULL && i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].name, name))
      return &kinds[i];
  return NULL;
}

/* As stead_paper_find(), with a message for the person. */
static const SteadPaperKind *
find_or_say (const char  *name,
             GError     **error)
{
  const SteadPaperKind *kind = stead_paper_find (name);
  g_autoptr(GString) names = g_string_new (NULL);

  if (kind != NULL)
    return kind;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_string_append_printf (names, i == 0 ? "%s" : ", %s", kinds[i].name);
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN,
               _("There is no document called “%s”. There is: %s."), name, names->str);
  return NULL;
}

/* --- what the documents share ----------------------------------------------- */

gboolean
stead_paper_find_product (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          gint64                   *out_id,
                          SteadPeriod              *out_period,
                          GError                  **error)
{
  *out_period = options == NULL ? STEAD_PERIOD_12_WEEKS : options->period;
  return stead_subject_product (store, of, out_id, error);
}

SteadCostAnswer *
stead_paper_read_cost (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  gint64 product_id;
  SteadPeriod period;

  if (!stead_paper_find_product (store, of, options, &product_id, &period, error))
    return NULL;
  return stead_cost_answer_new (store, product_id, period, error);
}

SteadPriceAnswer *
stead_paper_read_price (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  SteadPriceAnswer *answer;
  gint64 product_id;
  SteadPeriod period;

  if (!stead_paper_find_product (store, of, options, &product_id, &period, error))
    return NULL;
  answer = stead_price_answer_new (store, product_id, period, error);
  if (answer != NULL && options != NULL && options->cvp != NULL)
    stead_price_answer_set (answer, options->cvp);
  return answer;
}

char *
stead_paper_period (const SteadCostAnswer *cost)
{
  g_autofree char *from = stead_day_format (cost->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (cost->to, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: the first and the last day of a period. */
  return g_strdup_printf (_("%s to %s"), from, to);
}

char *
stead_paper_money (const SteadCostAnswer *cost,
                   gint64                 cents)
{
  return stead_money_format (cents, cost->farm->currency);
}

char *
stead_paper_moneyf (const SteadCostAnswer *cost,
                    double                 cents)
{
  return stead_money_format (stead_money_round (cents), cost->farm->currency);
}

/* --- the object -------------------------------------------------------------- */

static void
stead_paper_finalize (GObject *object)
{
  g_clear_pointer (&STEAD_PAPER (object)->pages, stead_pages_free);
  G_OBJECT_CLASS (stead_paper_parent_class)->finalize (object);
}

static void
stead_paper_class_init (SteadPaperClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_paper_finalize;
}

static void
stead_paper_init (SteadPaper *self)
{
}

SteadPaper *
stead_paper_new (SteadStore               *store,
                 const char               *name,
                 const char               *of,
                 const SteadPaperOptions  *options,
                 GError                  **error)
{
  const SteadPaperKind *kind = find_or_say (name, error);
  SteadPages *pages;
  SteadPaper *self;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if (kind == NULL)
    return NULL;
  if (makers[kind - kinds].pages == NULL)
    {
      g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN,
                   _("“%s” has no pages. Save it as a table instead."), _(kind->title));
      return NULL;
    }
  pages = makers[kind - kinds].pages (store, of, options, error);
  if (pages == NULL)
    return NULL;
  self = g_object_new (STEAD_TYPE_PAPER, NULL);
  self->pages = pages;
  return self;
}

const char *
stead_paper_get_title (SteadPaper *self)
{
  g_return_val_if_fail (STEAD_IS_PAPER (self), NULL);
  return stead_pages_title (self->pages);
}

int
stead_paper_get_n_pages (SteadPaper *self)
{
  g_return_val_if_fail (STEAD_IS_PAPER (self), 0);
  return stead_pages_count (self->pages);
}

void
stead_paper_get_size (SteadPaper *self,
                      double     *width_pt,
                      double     *height_pt)
{
  g_return_if_fail (STEAD_IS_PAPER (self));
  stead_pages_size (self->pages, width_pt, height_pt);
}

void
stead_paper_draw_page (SteadPaper *self,
                       int         page,
                       cairo_t    *cr)
{
  g_return_if_fail (STEAD_IS_PAPER (self));
  stead_pages_draw (self->pages, page, cr);
}

gboolean
stead_paper_save_pdf (SteadPaper  *self,
                      const char  *path,
                      GError     **error)
{
  g_autoptr(GBytes) pdf = NULL;

  g_return_val_if_fail (STEAD_IS_PAPER (self), FALSE);
  pdf = stead_pdf_from_pages (self->pages, stead_pages_language (self->pages), error);
  return pdf != NULL && stead_output_write (path, pdf, error);
}

/* --- any kind in any format --------------------------------------------------- */

static const struct
{
  const char  *ending;
  SteadFormat  format;
} endings[] = {
  { ".pdf", STEAD_FORMAT_PDF }, { ".png", STEAD_FORMAT_PNG }, { ".svg", STEAD_FORMAT_SVG },
  { ".csv", STEAD_FORMAT_CSV }, { ".xlsx", STEAD_FORMAT_XLSX }, { ".ics", STEAD_FORMAT_ICS },
};

/* The format that the path's ending tells; refuses what the kind cannot be written in. */
static gboolean
find_format (const SteadPaperKind  *kind,
             const char            *path,
             SteadFormat           *out,
             GError               **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);
  g_autoptr(GString) good = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      if (!(kind->formats & endings[i].format))
        continue;
      if (g_str_has_suffix (lower, endings[i].ending))
        {
          *out = endings[i].format;
          return TRUE;
        }
      g_string_append_printf (good, good->len == 0 ? "%s" : ", %s", endings[i].ending);
    }
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN,
               _("“%s” can be written to a file that ends in: %s. Change the ending of the name."),
               _(kind->title), good->str);
  return FALSE;
}

static gboolean
write_table (SteadStore               *store,
             LogFunc                   read,
             const char               *of,
             const SteadPaperOptions  *options,
             SteadFormat               format,
             const char               *path,
             GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadLogAnswer) log = imprint == NULL ? NULL : read (store, of, options, error);
  g_autoptr(GBytes) bytes = NULL;

  if (log == NULL)
    return FALSE;
  bytes = format == STEAD_FORMAT_CSV ? stead_csv_from_log (log, options != NULL && options->for_spreadsheet)
                                     : stead_xlsx_from_log (log, imprint->farm_name, error);
  return bytes != NULL && stead_output_write (path, bytes, error);
}

static gboolean
write_calendar (SteadStore  *store,
                const char  *path,
                GError     **error)
{
  g_autoptr(SteadAgendaAnswer) agenda = stead_agenda_answer_new (store, error);
  g_autoptr(GBytes) bytes = agenda != NULL ? g_bytes_new (agenda->ics, strlen (agenda->ics)) : NULL;

  return bytes != NULL && stead_output_write (path, bytes, error);
}

gboolean
stead_paper_write (SteadStore               *store,
                   const char               *name,
                   const char               *of,
                   const SteadPaperOptions  *options,
                   const char               *path,
                   GError                  **error)
{
  const SteadPaperKind *kind = find_or_say (name, error);
  g_autoptr(SteadPaper) paper = NULL;
  g_autoptr(GBytes) picture = NULL;
  SteadFormat format;

  g_return_val_if_fail (STEAD_IS_STORE (store) && path != NULL, FALSE);
  if (kind == NULL || !find_format (kind, path, &format, error))
    return FALSE;
  if (format == STEAD_FORMAT_ICS)
    return write_calendar (store, path, error);
  if (g_str_equal (kind->name, "workbook"))
    return stead_workbook_save (store, FALSE, path, error);
  if (format == STEAD_FORMAT_CSV || format == STEAD_FORMAT_XLSX)
    return write_table (store, makers[kind - kinds].log, of, options, format, path, error);
  if (format == STEAD_FORMAT_PNG || format == STEAD_FORMAT_SVG)
    {
      picture = stead_chart_picture (store, of, options, format, error);
      return picture != NULL && stead_output_write (path, picture, error);
    }
  paper = stead_paper_new (store, name, of, options, error);
  return paper != NULL && stead_paper_save_pdf (paper, path, error);
}
