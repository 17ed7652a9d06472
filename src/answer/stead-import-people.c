/* stead-import-people.c - judges the rows of a class list.
 *
 * A row is one person: a name, a class year, a role and a group, of which only the name is
 * needed.  A column that is not one of these is not read: an address, a birthday or a number
 * of the school's stays in the file.  Groups that are not there yet are made.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"

#include "store/stead-people-repo.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  SteadPerson *person;
  char        *group;   /* (nullable) */
} ListRow;

static void
free_row (gpointer fact)
{
  ListRow *row = fact;

  if (row == NULL)
    return;
  stead_person_free (row->person);
  g_free (row->group);
  g_free (row);
}

static const struct { const char *word; SteadPersonRole role; } roles[] = {
  { "student", STEAD_PERSON_STUDENT }, { "pupil", STEAD_PERSON_STUDENT }, { "estudiante", STEAD_PERSON_STUDENT },
  { "alumno", STEAD_PERSON_STUDENT }, { "alumna", STEAD_PERSON_STUDENT },
  { "advisor", STEAD_PERSON_ADVISOR }, { "adviser", STEAD_PERSON_ADVISOR }, { "teacher", STEAD_PERSON_ADVISOR },
  { "asesor", STEAD_PERSON_ADVISOR }, { "asesora", STEAD_PERSON_ADVISOR }, { "maestro", STEAD_PERSON_ADVISOR },
  { "maestra", STEAD_PERSON_ADVISOR }, { "profesor", STEAD_PERSON_ADVISOR }, { "profesora", STEAD_PERSON_ADVISOR },
  { "helper", STEAD_PERSON_HELPER }, { "volunteer", STEAD_PERSON_HELPER }, { "ayudante", STEAD_PERSON_HELPER },
  { "voluntario", STEAD_PERSON_HELPER }, { "voluntaria", STEAD_PERSON_HELPER },
};

static gboolean
read_role (const SteadImportJudge *judge,
           SteadImportRow         *row,
           SteadPersonRole        *out)
{
  g_autofree char *word = stead_line_fold (stead_import_cell (judge, row, STEAD_COLUMN_ROLE));

  if (*g_strstrip (word) == '\0')
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (roles); i++)
    if (g_str_equal (roles[i].word, word))
      {
        *out = roles[i].role;
        return TRUE;
      }
  return stead_import_wrong (judge, row, STEAD_COLUMN_ROLE,
                             g_strdup (_("A role is student, advisor or helper. Leave it empty for a student.")));
}

static gboolean
read_year (const SteadImportJudge *judge,
           SteadImportRow         *row,
           int                    *out)
{
  gint32 year = 0;

  if (!stead_import_read_count (judge, row, STEAD_COLUMN_CLASS_YEAR, &year))
    return FALSE;
  if (year != 0 && !(year >= 1990 && year <= 2199))
    return stead_import_wrong (judge, row, STEAD_COLUMN_CLASS_YEAR,
                               g_strdup (_("A class year is the year of leaving school in four digits, such as 2027.")));
  *out = year;
  return TRUE;
}

static void
read_row (SteadImportJudge *judge,
          SteadImportRow   *row)
{
  ListRow *listed;

  if (!stead_import_is_to_read (row))
    return;
  listed = g_new0 (ListRow, 1);
  listed->person = g_new0 (SteadPerson, 1);
  listed->person->left_on = STEAD_DAY_NONE;
  listed->person->name = stead_import_read_text (judge, row, STEAD_COLUMN_PERSON);
  if (listed->person->name == NULL)
    stead_import_wrong (judge, row, STEAD_COLUMN_PERSON, g_strdup (_("The name is missing.")));
  else if (g_utf8_strlen (listed->person->name, -1) > 200)
    stead_import_wrong (judge, row, STEAD_COLUMN_PERSON, g_strdup (_("This name is too long. At most 200 letters fit.")));
  else if (read_role (judge, row, &listed->person->role) && read_year (judge, row, &listed->person->class_year))
    {
      listed->group = stead_import_read_text (judge, row, STEAD_COLUMN_GROUP);
      row->fact = listed;
      row->state = STEAD_ROW_TAKE;
      return;
    }
  free_row (listed);
}

/* Who is on the farm's list is left alone; a name that comes twice in the file must be told apart. */
static void
judge_name (SteadImportJudge *judge,
            SteadImportRow   *row,
            GHashTable       *seen)
{
  const ListRow *listed = row->fact;
  g_autofree char *key = NULL;

  if (listed == NULL)
    return;
  key = g_utf8_casefold (listed->person->name, -1);
  if (!g_hash_table_add (seen, g_steal_pointer (&key)))
    stead_import_wrong (judge, row, STEAD_COLUMN_PERSON,
                        g_strdup_printf (_("There is a second %s in this list. Tell them apart, with a letter of the family "
                                           "name or a number."), listed->person->name));
  else if (stead_import_find_person (judge, listed->person->name) > 0)
    stead_import_skip (row, g_strdup (_("Somebody of this name is on the farm's list already. For another person, add "
                                        "something to tell them apart.")));
  else
    return;
  g_clear_pointer (&row->fact, free_row);
}

static gboolean
judge_rows (SteadImportJudge  *judge,
            GPtrArray         *rows,
            GError           **error)
{
  g_autoptr(GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      read_row (judge, rows->pdata[i]);
      judge_name (judge, rows->pdata[i], seen);
    }
  return TRUE;
}

/* --- words ------------------------------------------------------------------ */

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const ListRow *listed = fact;
  const SteadPerson *person = listed->person;
  const char *role = person->role == STEAD_PERSON_ADVISOR ? C_("role", "Advisor")
                     : person->role == STEAD_PERSON_HELPER ? C_("role", "Helper") : C_("role", "Student");
  g_autofree char *head = person->class_year != 0
                          /* Translators: a name, "Student", a year. */
                          ? g_strdup_printf (_("%1$s: %2$s, class of %3$d"), person->name, role, person->class_year)
                          /* Translators: a name, "Student". */
                          : g_strdup_printf (C_("class list", "%1$s: %2$s"), person->name, role);

  if (listed->group == NULL)
    return g_steal_pointer (&head);
  /* Translators: "Ada B.: Student, class of 2027", the name of a group. */
  return g_strdup_printf (_("%1$s; in the group %2$s"), head, listed->group);
}

/* --- the kind --------------------------------------------------------------- */

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             id,
         GError           **error)
{
  return TRUE;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  return columns->at[STEAD_COLUMN_PERSON] >= 0;
}

static gboolean
join_group (SteadStore   *store,
            const char   *name,
            gint64        person_id,
            GError      **error)
{
  g_autoptr(GPtrArray) groups = stead_group_repo_list (store, error);
  g_autoptr(SteadGroup) fresh = NULL;
  SteadGroup *group = NULL;

  if (groups == NULL)
    return FALSE;
  for (guint i = 0; i < groups->len && group == NULL; i++)
    if (g_str_equal (((SteadGroup *) groups->pdata[i])->name, name))
      group = groups->pdata[i];
  if (group == NULL)
    {
      group = fresh = stead_group_new ();
      group->name = g_strdup (name);
    }
  g_array_append_val (group->person_ids, person_id);
  return stead_group_repo_save (store, group, error);
}

static gboolean
write_rows (GPtrArray            *rows,
            SteadStore           *store,
            GCancellable         *cancellable,
            SteadImportProgress   progress,
            gpointer              data,
            GError              **error)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];
      ListRow *listed = row->fact;

      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      if (row->state == STEAD_ROW_TAKE)
        {
          listed->person->id = 0;
          if (!stead_person_repo_save (store, listed->person, error) ||
              (listed->group != NULL && !join_group (store, listed->group, listed->person->id, error)))
            return FALSE;
        }
      if (progress != NULL)
        progress ((i + 1.0) / rows->len, data);
    }
  return TRUE;
}

const SteadImportMethods stead_import_people = {
  .name = "people",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Name; Class of, Role and Group may stand too."),
  .judge = judge_rows,
  .understood = understood,
  .free_fact = free_row,
  .write = write_rows,
};
