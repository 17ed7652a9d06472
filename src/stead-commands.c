/* stead-commands.c - the program without a window: makes, asks, writes, checks. */
#include "config.h"

#include "stead-commands.h"
#include "stead-commands-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "answer/stead-demo-answer.h"
#include "answer/stead-folder-answer.h"
#include "answer/stead-question.h"
#include "answer/stead-rescue-answer.h"
#include "answer/stead-words.h"
#include "paper/stead-packet-paper.h"

/* One line, whatever the message holds. */
int
commands_complain (const char *message)
{
  g_autofree char *line = g_strdelimit (g_strdup (message), "\r\n", ' ');

  g_printerr ("steading: %s\n", line);
  return STEAD_STATUS_NOT_DONE;
}

int
commands_misunderstood (const char *message)
{
  commands_complain (message);
  return STEAD_STATUS_NOT_UNDERSTOOD;
}

void
commands_print_markup (const char *markup)
{
  g_autofree char *plain = stead_words_plain (markup);

  g_print ("%s\n", plain);
}

SteadStore *
commands_open_farm (const SteadOptions   *options,
                    const char           *path,
                    SteadStoreOpenFlags   flags,
                    GError              **error)
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
make_new (const SteadOptions *options)
{
  g_autofree char *name = name_from_path (options->new_farm);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (options->new_farm, name, &error);

  if (store == NULL)
    return commands_complain (error->message);
  g_print (_("Made the farm “%s”.\n"), name);
  return STEAD_STATUS_DONE;
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
make_demo (const SteadOptions *options)
{
  g_autofree char *description = demo_description ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  store = stead_demo_answer_create (options->demo, description,
                                  options->day != STEAD_DAY_NONE ? options->day : clock_day (), &error);
  if (store == NULL)
    return commands_complain (error->message);
  g_print (_("Made the demo farm. Its people and figures are invented.\n"));
  return STEAD_STATUS_DONE;
}

/* --- asking ------------------------------------------------------------------------ */

static int
ask (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = commands_open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autofree char *sentence = NULL;
  g_autofree char *text = NULL;
  g_autoptr(JsonNode) figures = NULL;
  g_autoptr(JsonGenerator) generator = json_generator_new ();

  if (store == NULL || !stead_question_ask (store, options->ask, options->of, &sentence, &figures, &error))
    return commands_complain (error->message);
  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, figures);
  text = json_generator_to_data (generator, NULL);
  g_print ("%s\n%s\n", sentence, text);
  return STEAD_STATUS_DONE;
}

static int
list_questions (const SteadOptions *options)
{
  gsize n;
  const SteadQuestion *questions = stead_question_list (&n);

  for (gsize i = 0; i < n; i++)
    g_print ("%s\t%s\n", questions[i].name, _(questions[i].asks));
  return STEAD_STATUS_DONE;
}

/* --- documents ----------------------------------------------------------------------- */

static int
write_document (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  SteadPaperOptions paper = { .period = options->days };

  if (options->out == NULL)
    return commands_misunderstood (_("Say with --out where the document is to go."));
  store = commands_open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  if (store == NULL
      || !stead_paper_write (store, options->document, options->of, &paper, options->out, &error))
    return commands_complain (error->message);
  return STEAD_STATUS_DONE;
}

/* One file a student and a team; those that fail are told, and the others are made. */
static int
write_packets (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = commands_open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autoptr(SteadPacketRun) run = store != NULL ? stead_packet_run_new (store, options->packets, &error) : NULL;
  guint n, failed = 0;

  if (run == NULL)
    return commands_complain (error->message);
  n = stead_packet_run_count (run);
  while (stead_packet_run_done (run) < n)
    {
      g_autoptr(GError) problem = NULL;

      if (stead_packet_run_step (run, &problem))
        continue;
      failed++;
      commands_complain (problem->message);
    }
  g_print (g_dngettext (GETTEXT_PACKAGE, "Made %u packet.\n", "Made %u packets.\n", n - failed), n - failed);
  return failed == 0 ? STEAD_STATUS_DONE : STEAD_STATUS_NOT_DONE;
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
list_documents (const SteadOptions *options)
{
  gsize n;
  const SteadPaperKind *kinds = stead_paper_list (&n);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *formats = format_names (kinds[i].formats);

      g_print ("%s\t%s\t%s\n", kinds[i].name, formats, _(kinds[i].title));
    }
  return STEAD_STATUS_DONE;
}

/* --- a farm as a folder ----------------------------------------------------------------- */

/* What left is told, so that nothing leaves unseen. */
static int
export_folder (const SteadOptions *options)
{
  const SteadFolderOptions tables = { 0 };   /* no names, notes or pictures */
  const char *path = options->export_folder != NULL ? options->export_folder : options->export_tables;
  const SteadFolderOptions *what = options->export_folder != NULL ? NULL : &tables;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = commands_open_farm (options, options->rest[0], STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autoptr(SteadLeaving) leaving = store != NULL ? stead_folder_answer_leaving (store, what, &error) : NULL;

  if (leaving == NULL || !stead_folder_answer_write (store, path, what, NULL, &error))
    return commands_complain (error->message);
  commands_print_markup (leaving->sentence);
  if (leaving->warning != NULL)
    g_print ("%s\n", leaving->warning);
  return STEAD_STATUS_DONE;
}

static int
import_folder (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;

  if (!stead_folder_read (options->import_folder, options->rest[0], NULL, &error))
    return commands_complain (error->message);
  g_print (_("Made the farm of the folder.\n"));
  return STEAD_STATUS_DONE;
}

/* --- checking --------------------------------------------------------------------------- */

static int
verify (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) faults = stead_store_verify (options->verify, NULL, &error);
  g_autofree char *message = NULL;

  if (faults == NULL)
    return commands_complain (error->message);
  if (faults->len == 0)
    {
      g_print (_("The farm is sound.\n"));
      return STEAD_STATUS_DONE;
    }
  for (guint i = 0; i < faults->len; i++)
    g_print ("%s\n", (const char *) faults->pdata[i]);
  message = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u thing is wrong with this farm.",
                                          "%u things are wrong with this farm.", faults->len), faults->len);
  return commands_complain (message);
}

/* --- rescuing --------------------------------------------------------------------------- */

/* Done if a farm came of it; what it lacks is told. */
static int
rescue (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRescue) found = stead_rescue_run (options->rescue, options->rest[0], NULL, &error);
  g_autofree char *text = NULL;

  if (found == NULL)
    return commands_complain (error->message);
  text = stead_rescue_answer_text (found, G_MAXUINT);
  g_print ("%s\n", text);
  return STEAD_STATUS_DONE;
}

/* --- the command line ------------------------------------------------------------------- */

static int
print_version (const SteadOptions *options)
{
  g_print ("steading %s\n", STEAD_VERSION);
  return STEAD_STATUS_DONE;
}

#define WORD(member) G_STRUCT_OFFSET (SteadOptions, member), FALSE
#define FLAG(member) G_STRUCT_OFFSET (SteadOptions, member), TRUE

static const struct
{
  gsize     offset;                             /* of the option that asks for it */
  gboolean  is_flag;                            /* or it is a word */
  guint     n_files;                            /* named behind the options */
  int     (*run) (const SteadOptions *options);
} commands[] = {
  { WORD (new_farm), 0, make_new },
  { WORD (demo), 0, make_demo },
  { WORD (import), 2, commands_import },
  { WORD (ask), 1, ask },
  { WORD (document), 1, write_document },
  { WORD (packets), 1, write_packets },
  { WORD (verify), 0, verify },
  { WORD (rescue), 1, rescue },
  { WORD (export_folder), 1, export_folder },
  { WORD (export_tables), 1, export_folder },
  { WORD (import_folder), 1, import_folder },
  { FLAG (list_questions), 0, list_questions },
  { FLAG (list_documents), 0, list_documents },
  { FLAG (version), 0, print_version },
};

static gboolean
is_asked (const SteadOptions *options,
          gsize          command)
{
  const void *option = G_STRUCT_MEMBER_P (options, commands[command].offset);

  return commands[command].is_flag ? *(const gboolean *) option : *(char * const *) option != NULL;
}

/* Runs the one command that was asked for. */
static int
run (SteadOptions *options,
     gsize         command)
{
  guint files = options->rest != NULL ? g_strv_length (options->rest) : 0;
  guint wanted = commands[command].n_files;
  const char *fault = stead_options_read (options);

  if (fault != NULL)
    return commands_misunderstood (fault);
  if (files != wanted)
    return commands_misunderstood (wanted == 2 ? _("After the kind of import come the table and the farm file.")
                                   : wanted == 1 ? _("Name one farm file.") : _("This takes no further file."));
  return commands[command].run (options);
}

gboolean
stead_commands_run (const char * const *argv,
                    int                *out_status)
{
  g_auto(SteadOptions) options = { 0 };
  g_autoptr(GError) error = NULL;
  gsize command = 0;
  guint asked = 0;

  g_return_val_if_fail (argv != NULL && out_status != NULL, FALSE);

  if (!stead_options_parse (&options, argv, &error))
    {
      *out_status = commands_misunderstood (error->message);
      return TRUE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (is_asked (&options, i))
      {
        command = i;
        asked++;
      }
  if (asked == 0)
    return FALSE;
  *out_status = asked > 1 ? commands_misunderstood (_("Ask for one thing at a time.")) : run (&options, command);
  return TRUE;
}
