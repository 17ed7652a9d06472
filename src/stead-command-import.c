/* stead-command-import.c - takes a table into a farm, and tells what cannot be taken. */
#include "config.h"

#include "stead-commands-private.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-subject.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"

/* What went wrong beside a change that was made all the same. */
static void
tell_notice (SteadStore *store)
{
  g_autofree char *notice = stead_store_take_notice (store);

  if (notice != NULL)
    commands_complain (notice);
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
finish_import (const SteadOptions *options,
               SteadImport   *import,
               SteadStore    *store)
{
  guint take = stead_import_count (import, STEAD_ROW_TAKE);
  guint wrong = stead_import_count (import, STEAD_ROW_WRONG);
  g_autoptr(GError) error = NULL;
  g_autofree char *message = NULL;

  if (take > 0 && !options->dry_run && !stead_import_take (import, store, NULL, NULL, NULL, &error))
    return commands_complain (error->message);
  if (!options->dry_run)
    g_print (g_dngettext (GETTEXT_PACKAGE, "%u row was taken.\n", "%u rows were taken.\n", take), take);
  tell_notice (store);
  if (wrong == 0)
    return STEAD_STATUS_DONE;
  message = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u row is wrong and was left out.",
                                          "%u rows are wrong and were left out.", wrong), wrong);
  return commands_complain (message);
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

int
commands_import (const SteadOptions *options)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(SteadImport) table = NULL;
  g_autofree char *holder = NULL;
  SteadImportKind kind;
  gint64 batch = 0;

  if (!stead_import_kind_from_name (options->import, &kind))
    return commands_misunderstood (_("Import knows these kinds: flock-log, receipts, fish-log, weighings, "
                                     "temperatures, picks, bank, people, cooler."));
  store = commands_open_farm (options, options->rest[1], STEAD_STORE_OPEN_DEFAULT, &error);
  if (store == NULL
      || (options->of != NULL && !find_batch (store, kind, options->of, &batch, &error)))
    return commands_complain (error->message);
  holder = options->dry_run ? NULL : stead_store_hold (store);
  if (holder != NULL)
    return commands_complain (holder);
  table = stead_import_read (store, kind, batch, options->rest[0], options->order, NULL, NULL, NULL, &error);
  if (table == NULL)
    return commands_complain (error->message);
  commands_print_markup (stead_import_get_sentence (table));
  g_print ("%s\n", stead_import_get_reading (table));
  print_wrong_rows (table);
  return finish_import (options, table, store);
}
