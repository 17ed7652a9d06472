/* stead-commands.c - the program without a window: makes, imports, asks, writes, checks. */
#include "config.h"

#include "stead-commands.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-demo-answer.h"
#include "answer/stead-folder-answer.h"
#include "answer/stead-import-answer.h"
#include "answer/stead-question.h"
#include "answer/stead-rescue-answer.h"
#include "answer/stead-subject.h"
#include "answer/stead-words.h"
#include "paper/stead-packet-paper.h"
#include "paper/stead-paper.h"
#include "store/stead-farm-repo.h"
#include "store/stead-store.h"

#define STATUS_DONE 0
#define STATUS_NOT_DONE 1
#define STATUS_NOT_UNDERSTOOD 2

/* What stood on the command line. */
typedef struct
{
  char     *new_farm;
  char     *demo;
  char     *import;
  char     *ask;
  char     *document;
  char     *packets;
  char     *verify;
  char     *rescue;
  char     *export_folder;
  char     *export_tables;
  char     *import_folder;
  char     *of;
  char     *out;
  char     *dates;
  char     *period;
  char     *today;
  gboolean  dry_run;
  gboolean  list_questions;
  gboolean  list_documents;
  gboolean  version;
  char    **rest;

  /* Made of the above. */
  SteadDateOrder order;
  SteadPeriod    days;
  SteadDay       day;      /* STEAD_DAY_NONE: the real one */
} Options;

static void
options_clear (Options *options)
{
  g_free (options->new_farm);
  g_free (options->demo);
  g_free (options->import);
  g_free (options->ask);
  g_free (options->document);
  g_free (options->packets);
  g_free (options->verify);
  g_free (options->rescue);
  g_free (options->export_folder);
  g_free (options->export_tables);
  g_free (options->import_folder);
  g_free (options->of);
  g_free (options->out);
  g_free (options->dates);
  g_free (options->period);
  g_free (options->today);
  g_strfreev (options->rest);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* One line, whatever the message holds. */
static int
complain (const char *message)
{
  g_autofree char *line = g_strdelimit (g_strdup (message), "\r\n", ' ');

  g_printerr ("steading: %s\n", line);
  return STATUS_NOT_DONE;
}

static int
misunderstood (const char *message)
{
  complain (message);
  return STATUS_NOT_UNDERSTOOD;
}

/* What went wrong beside a change that was made all the same. */
static void
tell_notice (SteadStore *store)
{
  g_autofree char *notice = stead_store_take_notice (store);

  if (notice != NULL)
    complain (notice);
}

static SteadStore *
open_farm (const Options       *options,
           const char          *path,
           SteadStoreOpenFlags  flags,
           GError             **error)
{
  SteadStore *store = stead_store_open (path, flags, error);

  if (store != NULL && options->day != STEAD_DAY_NONE)
    stead_store_set_today (store, options->day);
  return store;
}

/* --- making a farm ------------------------------------------------------------- */

/* "Ember Lake School Farm" of "farms/Ember Lake School Farm.steading". */
static char *
name_from_path (const char *path)
{
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = g_filename_display_name (base);

  if (g_str_has_suffix (name, ".steading"))
    name[strlen (name) - strlen (".steading")] = '\0';
  return *name != '\0' ? g_steal_pointer (&name) : g_strdup (_("New farm"));
}

static int
make_new (const Options *options)
{
  g_autofree char *name = name_from_path (options->new_farm);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (options->new_farm, name, &error);

  if (store == NULL)
    return complain (error->message);
  g_print (_("Made the farm “%s”.\n"), name);
  return STATUS_DONE;
}

/* The description beside the program's data, if there is one; else the one built in. */
static char *
demo_description (void)
{
  const char *named = g_getenv ("STEAD_DATA");
  g_autofree char *path = g_build_filename (named != NULL && *named != '\0' ? named : STEAD_DATA_DIR,
                                            "demo", "ember-lake.ini", NULL);
  char *text = NULL;

  return g_file_get_contents (path, &text, NULL, NULL) ? text : NULL;
}

static SteadDay
clock_day (void)
{
  g_autoptr(GDateTime) now = g_date_time_new_now_local ();

  return stead_day_new (g_date_time_get_year (now), g_date_time_get_month (now), g_date_time_get_day_of_month (now));
}

static int
make_demo (const Options *options)
{
  g_autofree char *description = demo_description ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  store = stead_demo_answer_create (options->demo, description,
                                  options->day != STEAD_DAY_NONE ? options->day : clock_day (), &error);
  if (store == NULL)
    return complain (error->message);
  g_print (_("Made the demo farm. Its people and figures are invented.\n"));
  return STATUS_DONE;
}

/* --- importing -------------------------------------------------------------------- */

static void
print_markup (const char *markup)
{
  g_autofree char *plain = stead_words_plain (markup);

  g_print ("%s\n", plain);
}

/* "line 12, Eggs “99”: …" for each row that is wrong. */
static void
print_wrong_rows (SteadImport *import)
{
  const char * const *header = stead_import_get_header (import);
  int n = (int) g_strv_length ((char **) header);

  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    {
      const SteadImportRow *row = stead_import_get_row (import, i);

      if (row->state != STEAD_ROW_WRONG)
        continue;
      if (row->column >= 0 && row->column < n && row->column < (int) g_strv_length (row->cells))
        /* Translators: a row that cannot be taken: line, column, what stands there, why. */
        g_print (_("Line %u, %s “%s”: %s\n"), row->line, header[row->column], row->cells[row->column], row->message);
      else
        /* Translators: a row that cannot be taken: line, why. */
        g_print (_("Line %u: %s\n"), row->line, row->message);
    }
}

static int
finish_import (const Options *options,
               SteadImport   *import,
               SteadStore    *store)
{
  guint take = stead_import_count (import, STEAD_ROW_TAKE);
  guint wrong = stead_import_count (import, STEAD_ROW_WRONG);
  g_autoptr(GError) error = NULL;
  g_autofree char *message = NULL;

  if (take > 0 && !options->dry_run && !stead_import_take (import, store, NULL, NULL, NULL, &error))
    return complain (error->message);
  if (!options->dry_run)
    g_print (g_dngettext (GETTEXT_PACKAGE, "%u row was taken.\n", "%u rows were taken.\n", take), take);
  tell_notice (store);
  if (wrong == 0)
    return STATUS_DONE;
  message = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u row is wrong and was left out.",
                                          "%u rows are wrong and were left out.", wrong), wrong);
  return complain (message);
}

static gboolean
find_place (SteadStore  *store,
            const char  *name,
            gint64      *out_id,
            GError     **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);

  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (g_str_equal (place->name, name))
        {
          *out_id = place->id;
          return TRUE;
        }
    }
  if (places != NULL)
    g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING, _("The farm has no place called “%s”."), name);
  return FALSE;
}

/* Whose table it is, by name. */
static gboolean
find_batch (SteadStore       *store,
            SteadImportKind   kind,
            const char       *name,
            gint64           *out_id,
            GError          **error)
{
  if (kind == STEAD_IMPORT_BANK)
    return stead_subject_account (store, name, out_id, error);
  if (kind == STEAD_IMPORT_COOLER)
    return find_place (store, name, out_id, error);
  if (kind == STEAD_IMPORT_TEMPERATURES || kind == STEAD_IMPORT_PICKS)
    return stead_subject_crop (store, name, out_id, error);
  return kind == STEAD_IMPORT_FISH_LOG || kind == STEAD_IMPORT_WEIGHINGS
         ? stead_subject_fish (store, name, out_id, error)
         : stead_subject_flock (store, name, out_id, error);
}

static int
import (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(SteadImport) table = NULL;
  g_autofree char *holder = NULL;
  SteadImportKind kind;
  gint64 batch = 0;

  if (!stead_import_kind_from_name (options->import, &kind))
    return misunderstood (_("Import knows these kinds: flock-log, receipts, fish-log, weighings, temperatures, picks, "
                            "bank, people, cooler."));
  store = open_farm (options, options->rest[1], STEAD_STORE_OPEN_DEFAULT, &error);
  if (store == NULL
      || (options->of != NULL && !find_batch (store, kind, options->of, &batch, &error)))
    return complain (error->message);
  holder = options->dry_run ? NULL : stead_store_hold (store);
  if (holder != NULL)
    return complain (holder);
  table = stead_import_read (store, kind, batch, options->rest[0], options->order, NULL, NULL, NULL, &error);
  if (table == NULL)
    return complain (error->message);
  print_markup (stead_import_get_sentence (table));
  g_print ("%s\n", stead_import_get_reading (table));
  print_wrong_rows (table);
  return finish_import (options, table, store);
}

/* --- asking ------------------------------------------------------------------------ */

static int
ask (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autofree char *sentence = NULL;
  g_autofree char *text = NULL;
  g_autoptr(JsonNode) figures = NULL;
  g_autoptr(JsonGenerator) generator = json_generator_new ();

  if (store == NULL || !stead_question_ask (store, options->ask, options->of, &sentence, &figures, &error))
    return complain (error->message);
  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, figures);
  text = json_generator_to_data (generator, NULL);
  g_print ("%s\n%s\n", sentence, text);
  return STATUS_DONE;
}

static int
list_questions (void)
{
  gsize n;
  const SteadQuestion *questions = stead_question_list (&n);

  for (gsize i = 0; i < n; i++)
    g_print ("%s\t%s\n", questions[i].name, _(questions[i].asks));
  return STATUS_DONE;
}

/* --- documents ----------------------------------------------------------------------- */

static int
write_document (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  SteadPaperOptions paper = { .period = options->days };

  if (options->out == NULL)
    return misunderstood (_("Say with --out where the document is to go."));
  store = open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  if (store == NULL
      || !stead_paper_write (store, options->document, options->of, &paper, options->out, &error))
    return complain (error->message);
  return STATUS_DONE;
}

/* One file a student and a team; those that fail are told, and the others are made. */
static int
write_packets (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autoptr(SteadPacketRun) run = store != NULL ? stead_packet_run_new (store, options->packets, &error) : NULL;
  guint n, failed = 0;

  if (run == NULL)
    return complain (error->message);
  n = stead_packet_run_count (run);
  while (stead_packet_run_done (run) < n)
    {
      g_autoptr(GError) problem = NULL;

      if (stead_packet_run_step (run, &problem))
        continue;
      failed++;
      complain (problem->message);
    }
  g_print (g_dngettext (GETTEXT_PACKAGE, "Made %u packet.\n", "Made %u packets.\n", n - failed), n - failed);
  return failed == 0 ? STATUS_DONE : STATUS_NOT_DONE;
}

static char *
format_names (SteadFormat formats)
{
  static const struct { SteadFormat format; const char *name; } names[] = {
    { STEAD_FORMAT_PDF, "pdf" }, { STEAD_FORMAT_PNG, "png" }, { STEAD_FORMAT_SVG, "svg" },
    { STEAD_FORMAT_CSV, "csv" }, { STEAD_FORMAT_XLSX, "xlsx" }, { STEAD_FORMAT_ICS, "ics" },
  };
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if ((formats & names[i].format) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", names[i].name);
  return g_string_free (text, FALSE);
}

static int
list_documents (void)
{
  gsize n;
  const SteadPaperKind *kinds = stead_paper_list (&n);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *formats = format_names (kinds[i].formats);

      g_print ("%s\t%s\t%s\n", kinds[i].name, formats, _(kinds[i].title));
    }
  return STATUS_DONE;
}

/* --- a farm as a folder ----------------------------------------------------------------- */

/* What left is told, so that nothing leaves unseen. */
static int
export_folder (const Options *options)
{
  const SteadFolderOptions tables = { 0 };   /* no names, notes or pictures */
  const char *path = options->export_folder != NULL ? options->export_folder : options->export_tables;
  const SteadFolderOptions *what = options->export_folder != NULL ? NULL : &tables;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autoptr(SteadLeaving) leaving = store != NULL ? stead_folder_answer_leaving (store, what, &error) : NULL;

  if (leaving == NULL || !stead_folder_answer_write (store, path, what, NULL, &error))
    return complain (error->message);
  print_markup (leaving->sentence);
  if (leaving->warning != NULL)
    g_print ("%s\n", leaving->warning);
  return STATUS_DONE;
}

static int
import_folder (const Options *options)
{
  g_autoptr(GError) error = NULL;

  if (!stead_folder_read (options->import_folder, options->rest[0], NULL, &error))
    return complain (error->message);
  g_print (_("Made the farm of the folder.\n"));
  return STATUS_DONE;
}

/* --- checking --------------------------------------------------------------------------- */

static int
verify (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) faults = stead_store_verify (options->verify, NULL, &error);
  g_autofree char *message = NULL;

  if (faults == NULL)
    return complain (error->message);
  if (faults->len == 0)
    {
      g_print (_("The farm is sound.\n"));
      return STATUS_DONE;
    }
  for (guint i = 0; i < faults->len; i++)
    g_print ("%s\n", (const char *) faults->pdata[i]);
  message = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u thing is wrong with this farm.",
                                          "%u things are wrong with this farm.", faults->len), faults->len);
  return complain (message);
}

/* --- rescuing --------------------------------------------------------------------------- */

/* Done if a farm came of it; what it lacks is told. */
static int
rescue (const Options *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRescue) found = stead_rescue_run (options->rescue, options->rest[0], NULL, &error);
  g_autofree char *text = NULL;

  if (found == NULL)
    return complain (error->message);
  text = stead_rescue_answer_text (found, G_MAXUINT);
  g_print ("%s\n", text);
  return STATUS_DONE;
}

/* --- the command line ------------------------------------------------------------------- */

static gboolean
parse (Options            *options,
       const char * const *argv,
       GError            **error)
{
  const GOptionEntry entries[] = {
    { "new", 0, 0, G_OPTION_ARG_FILENAME, &options->new_farm, N_("Make a new, empty farm"), N_("FILE") },
    { "demo", 0, 0, G_OPTION_ARG_FILENAME, &options->demo, N_("Make the demo farm"), N_("FILE") },
    { "import", 0, 0, G_OPTION_ARG_STRING, &options->import,
      N_("Take a table (flock-log, receipts, fish-log, weighings, temperatures, picks, bank or people) into a farm: KIND CSV FILE"),
      N_("KIND") },
    { "ask", 0, 0, G_OPTION_ARG_STRING, &options->ask, N_("Print an answer and its figures: QUESTION FILE"),
      N_("QUESTION") },
    { "document", 0, 0, G_OPTION_ARG_STRING, &options->document, N_("Write a document: NAME --out PATH FILE"),
      N_("NAME") },
    { "packets", 0, 0, G_OPTION_ARG_FILENAME, &options->packets,
      N_("Make the packets of the whole class in a folder: FOLDER FILE"), N_("FOLDER") },
    { "verify", 0, 0, G_OPTION_ARG_FILENAME, &options->verify, N_("Check a farm file"), N_("FILE") },
    { "rescue", 0, 0, G_OPTION_ARG_FILENAME, &options->rescue,
      N_("Put what can be read of a damaged farm into a new one: FROM TO"), N_("FROM") },
    { "export-folder", 0, 0, G_OPTION_ARG_FILENAME, &options->export_folder,
      N_("Write the whole farm as a folder of tables and pictures: FOLDER FILE"), N_("FOLDER") },
    { "export-tables", 0, 0, G_OPTION_ARG_FILENAME, &options->export_tables,
      N_("Write the tables without names, notes and pictures: FOLDER FILE"), N_("FOLDER") },
    { "import-folder", 0, 0, G_OPTION_ARG_FILENAME, &options->import_folder,
      N_("Make a farm of such a folder: FOLDER FILE"), N_("FOLDER") },
    { "of", 0, 0, G_OPTION_ARG_STRING, &options->of, N_("The batch, water or product that it is about"), N_("NAME") },
    { "out", 0, 0, G_OPTION_ARG_FILENAME, &options->out, N_("Where the document goes; the ending tells the format"),
      N_("PATH") },
    { "period", 0, 0, G_OPTION_ARG_STRING, &options->period,
      N_("Days of a document: 12-weeks, 4-weeks, school-year or whole-batch"), N_("PERIOD") },
    { "dates", 0, 0, G_OPTION_ARG_STRING, &options->dates, N_("How the table writes dates: mdy, dmy or ymd"),
      N_("ORDER") },
    { "dry-run", 0, 0, G_OPTION_ARG_NONE, &options->dry_run, N_("Only say what would be imported"), NULL },
    { "today", 0, 0, G_OPTION_ARG_STRING, &options->today, N_("Take this day for today"), N_("YYYY-MM-DD") },
    { "list-questions", 0, 0, G_OPTION_ARG_NONE, &options->list_questions, N_("List what --ask knows"), NULL },
    { "list-documents", 0, 0, G_OPTION_ARG_NONE, &options->list_documents, N_("List what --document knows"), NULL },
    { "version", 0, 0, G_OPTION_ARG_NONE, &options->version, N_("Print the version"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->rest, NULL, N_("[FILE]") },
    { NULL, 0, 0, 0, NULL, NULL, NULL },
  };
  g_autoptr(GOptionContext) context = g_option_context_new (NULL);
  g_auto(GStrv) words = g_strdupv ((char **) argv);

  g_option_context_set_summary (context, _("Plan a school farm, from the henhouse to the till."));
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  return g_option_context_parse_strv (context, &words, error);
}

static guint
count_commands (const Options *options)
{
  return (guint) ((options->new_farm != NULL) + (options->demo != NULL) + (options->import != NULL)
                  + (options->ask != NULL) + (options->document != NULL) + (options->verify != NULL)
                  + (options->rescue != NULL) + (options->packets != NULL)
                  + (options->list_questions != FALSE) + (options->list_documents != FALSE)
                  + (options->export_folder != NULL) + (options->export_tables != NULL)
                  + (options->import_folder != NULL) + (options->version != FALSE));
}

/* Files that stand behind the options: the table and the farm, the farm, none. */
static guint
files_wanted (const Options *options)
{
  if (options->import != NULL)
    return 2;
  return options->ask != NULL || options->document != NULL || options->packets != NULL || options->rescue != NULL || options->export_folder != NULL
         || options->export_tables != NULL || options->import_folder != NULL ? 1 : 0;
}

static gboolean
read_order (Options *options)
{
  static const struct { const char *name; SteadDateOrder order; } orders[] = {
    { "mdy", STEAD_DATE_ORDER_MDY }, { "dmy", STEAD_DATE_ORDER_DMY }, { "ymd", STEAD_DATE_ORDER_YMD },
  };

  options->order = STEAD_DATE_ORDER_UNKNOWN;
  if (options->dates == NULL)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (orders); i++)
    if (g_str_equal (options->dates, orders[i].name))
      options->order = orders[i].order;
  return options->order != STEAD_DATE_ORDER_UNKNOWN;
}

/* Only a whole date: "yesterday" would make another document tomorrow. */
static gboolean
read_today (Options *options)
{
  int year, month, day;
  int used = 0;

  options->day = STEAD_DAY_NONE;
  if (options->today == NULL)
    return TRUE;
  if (sscanf (options->today, "%4d-%2d-%2d%n", &year, &month, &day, &used) != 3 || options->today[used] != '\0')
    return FALSE;
  options->day = stead_day_new (year, month, day);
  return options->day != STEAD_DAY_NONE;
}

/* Returns: (nullable): what is wrong with the options as a whole */
static char *
check (Options *options)
{
  guint wanted = files_wanted (options);
  guint files = options->rest != NULL ? g_strv_length (options->rest) : 0;

  if (count_commands (options) > 1)
    return g_strdup (_("Ask for one thing at a time."));
  if (!read_order (options))
    return g_strdup (_("After --dates comes mdy, dmy or ymd."));
  if (!read_today (options))
    return g_strdup (_("After --today comes a day such as 2026-03-31."));
  options->days = STEAD_PERIOD_12_WEEKS;
  if (options->period != NULL && !stead_period_from_id (options->period, &options->days))
    return g_strdup (_("After --period comes 12-weeks, 4-weeks, school-year or whole-batch."));
  if (files == wanted)
    return NULL;
  return g_strdup (wanted == 2 ? _("After the kind of import come the table and the farm file.")
                   : wanted == 1 ? _("Name one farm file.") : _("This takes no further file."));
}

static int
run (const Options *options)
{
  if (options->version)
    {
      g_print ("steading %s\n", STEAD_VERSION);
      return STATUS_DONE;
    }
  if (options->list_questions)
    return list_questions ();
  if (options->list_documents)
    return list_documents ();
  if (options->new_farm != NULL)
    return make_new (options);
  if (options->demo != NULL)
    return make_demo (options);
  if (options->import != NULL)
    return import (options);
  if (options->ask != NULL)
    return ask (options);
  if (options->document != NULL)
    return write_document (options);
  if (options->packets != NULL)
    return write_packets (options);
  if (options->rescue != NULL)
    return rescue (options);
  if (options->export_folder != NULL || options->export_tables != NULL)
    return export_folder (options);
  if (options->import_folder != NULL)
    return import_folder (options);
  return verify (options);
}

gboolean
stead_commands_run (const char * const *argv,
                    int                *out_status)
{
  g_auto(Options) options = { 0 };
  g_autoptr(GError) error = NULL;
  g_autofree char *fault = NULL;

  g_return_val_if_fail (argv != NULL && out_status != NULL, FALSE);

  if (!parse (&options, argv, &error))
    {
      *out_status = misunderstood (error->message);
      return TRUE;
    }
  if (count_commands (&options) == 0)
    return FALSE;
  fault = check (&options);
  *out_status = fault != NULL ? misunderstood (fault) : run (&options);
  return TRUE;
}
