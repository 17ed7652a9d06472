/* stead-options.c - reads the command line. */
#include "config.h"

#include "stead-options.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

void
stead_options_clear (SteadOptions *self)
{
  g_free (self->new_farm);
  g_free (self->demo);
  g_free (self->import);
  g_free (self->ask);
  g_free (self->document);
  g_free (self->packets);
  g_free (self->verify);
  g_free (self->rescue);
  g_free (self->export_folder);
  g_free (self->export_tables);
  g_free (self->import_folder);
  g_free (self->of);
  g_free (self->out);
  g_free (self->dates);
  g_free (self->period);
  g_free (self->today);
  g_strfreev (self->rest);
}

gboolean
stead_options_parse (SteadOptions        *self,
                     const char * const  *argv,
                     GError             **error)
{
  const GOptionEntry entries[] = {
    { "new", 0, 0, G_OPTION_ARG_FILENAME, &self->new_farm, N_("Make a new, empty farm"), N_("FILE") },
    { "demo", 0, 0, G_OPTION_ARG_FILENAME, &self->demo, N_("Make the demo farm"), N_("FILE") },
    { "import", 0, 0, G_OPTION_ARG_STRING, &self->import,
      N_("Take a table (flock-log, receipts, fish-log, weighings, temperatures, picks, bank, people or cooler) into a farm: KIND CSV FILE"),
      N_("KIND") },
    { "ask", 0, 0, G_OPTION_ARG_STRING, &self->ask, N_("Print an answer and its figures: QUESTION FILE"),
      N_("QUESTION") },
    { "document", 0, 0, G_OPTION_ARG_STRING, &self->document, N_("Write a document: NAME --out PATH FILE"),
      N_("NAME") },
    { "packets", 0, 0, G_OPTION_ARG_FILENAME, &self->packets,
      N_("Make the packets of the whole class in a folder: FOLDER FILE"), N_("FOLDER") },
    { "verify", 0, 0, G_OPTION_ARG_FILENAME, &self->verify, N_("Check a farm file"), N_("FILE") },
    { "rescue", 0, 0, G_OPTION_ARG_FILENAME, &self->rescue,
      N_("Put what can be read of a damaged farm into a new one: FROM TO"), N_("FROM") },
    { "export-folder", 0, 0, G_OPTION_ARG_FILENAME, &self->export_folder,
      N_("Write the whole farm as a folder of tables and pictures: FOLDER FILE"), N_("FOLDER") },
    { "export-tables", 0, 0, G_OPTION_ARG_FILENAME, &self->export_tables,
      N_("Write the tables without names, notes and pictures: FOLDER FILE"), N_("FOLDER") },
    { "import-folder", 0, 0, G_OPTION_ARG_FILENAME, &self->import_folder,
      N_("Make a farm of such a folder: FOLDER FILE"), N_("FOLDER") },
    { "of", 0, 0, G_OPTION_ARG_STRING, &self->of, N_("The batch, water or product that it is about"), N_("NAME") },
    { "out", 0, 0, G_OPTION_ARG_FILENAME, &self->out, N_("Where the document goes; the ending tells the format"),
      N_("PATH") },
    { "period", 0, 0, G_OPTION_ARG_STRING, &self->period,
      N_("Days of a document: 12-weeks, 4-weeks, school-year or whole-batch"), N_("PERIOD") },
    { "dates", 0, 0, G_OPTION_ARG_STRING, &self->dates, N_("How the table writes dates: mdy, dmy or ymd"),
      N_("ORDER") },
    { "dry-run", 0, 0, G_OPTION_ARG_NONE, &self->dry_run, N_("Only say what would be imported"), NULL },
    { "today", 0, 0, G_OPTION_ARG_STRING, &self->today, N_("Take this day for today"), N_("YYYY-MM-DD") },
    { "list-questions", 0, 0, G_OPTION_ARG_NONE, &self->list_questions, N_("List what --ask knows"), NULL },
    { "list-documents", 0, 0, G_OPTION_ARG_NONE, &self->list_documents, N_("List what --document knows"), NULL },
    { "version", 0, 0, G_OPTION_ARG_NONE, &self->version, N_("Print the version"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &self->rest, NULL, N_("[FILE]") },
    { NULL, 0, 0, 0, NULL, NULL, NULL },
  };
  g_autoptr(GOptionContext) context = g_option_context_new (NULL);
  g_auto(GStrv) words = g_strdupv ((char **) argv);

  g_option_context_set_summary (context, _("Plan a school farm, from the henhouse to the till."));
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  return g_option_context_parse_strv (context, &words, error);
}

static gboolean
read_order (SteadOptions *self)
{
  static const struct { const char *name; SteadDateOrder order; } orders[] = {
    { "mdy", STEAD_DATE_ORDER_MDY }, { "dmy", STEAD_DATE_ORDER_DMY }, { "ymd", STEAD_DATE_ORDER_YMD },
  };

  self->order = STEAD_DATE_ORDER_UNKNOWN;
  if (self->dates == NULL)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (orders); i++)
    if (g_str_equal (self->dates, orders[i].name))
      self->order = orders[i].order;
  return self->order != STEAD_DATE_ORDER_UNKNOWN;
}

/* Only a whole date: "yesterday" would make another document tomorrow. */
static gboolean
read_today (SteadOptions *self)
{
  int year, month, day;
  int used = 0;

  self->day = STEAD_DAY_NONE;
  if (self->today == NULL)
    return TRUE;
  if (sscanf (self->today, "%4d-%2d-%2d%n", &year, &month, &day, &used) != 3 || self->today[used] != '\0')
    return FALSE;
  self->day = stead_day_new (year, month, day);
  return self->day != STEAD_DAY_NONE;
}

const char *
stead_options_read (SteadOptions *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  if (!read_order (self))
    return _("After --dates comes mdy, dmy or ymd.");
  if (!read_today (self))
    return _("After --today comes a day such as 2026-03-31.");
  self->days = STEAD_PERIOD_12_WEEKS;
  if (self->period != NULL && !stead_period_from_id (self->period, &self->days))
    return _("After --period comes 12-weeks, 4-weeks, school-year or whole-batch.");
  return NULL;
}
