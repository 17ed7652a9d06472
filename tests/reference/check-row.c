/* check-row.c - one row of a reference file: read, answered, compared.
 *
 * Nothing passes in silence: a name, word or unit that the topic does not have
 * makes the row unknown, as does an expected value that cannot be read.
 */
#include "check-row.h"

#include "core/stead-round.h"

#include <math.h>
#include <string.h>

struct _CheckRow
{
  GHashTable *inputs;       /* name to text */
  GPtrArray  *lists;        /* what check_list() handed out */
  char       *ask;
  char       *problem;      /* "input price_usd"; the first one found */
  char       *word;         /* an answer in words */
  char       *none;         /* why there is no answer */
};

static void
row_clear (CheckRow *row)
{
  g_clear_pointer (&row->inputs, g_hash_table_unref);
  g_clear_pointer (&row->lists, g_ptr_array_unref);
  g_free (row->ask);
  g_free (row->problem);
  g_free (row->word);
  g_free (row->none);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (CheckRow, row_clear)

static void
note (CheckRow   *row,
      const char *kind,
      const char *name)
{
  if (row->problem == NULL)
    row->problem = g_strdup_printf ("%s %s", kind, name);
}

double
check_bad_input (CheckRow   *row,
                 const char *name)
{
  note (row, "input", name);
  return NAN;
}

double
check_answer_word (CheckRow   *row,
                   const char *word)
{
  g_free (row->word);
  row->word = g_strdup (word);
  return NAN;
}

double
check_answer_none (CheckRow *row,
                   GError   *error)
{
  g_free (row->none);
  row->none = g_strdup (error != NULL ? error->message : "");
  return NAN;
}

const char *
check_ask_name (CheckRow *row)
{
  return row->ask;
}

gboolean
check_has (CheckRow   *row,
           const char *name)
{
  return g_hash_table_contains (row->inputs, name);
}

void
check_need (CheckRow   *row,
            const char *names)
{
  g_auto(GStrv) list = g_strsplit (names, " ", -1);

  for (gsize i = 0; list[i] != NULL; i++)
    if (!check_has (row, list[i]))
      check_bad_input (row, list[i]);
}

/* Beyond this a number is a slip of the pen. */
#define LARGEST 1e13

/* A plain decimal number and nothing else: no hexadecimal, no words. */
static gboolean
read_number (const char *text,
             double     *out)
{
  char *end = NULL;
  double value;

  if (*text == '\0' || strspn (text, "0123456789.+-eE") != strlen (text))
    return FALSE;
  value = g_ascii_strtod (text, &end);
  if (*end != '\0' || !(fabs (value) <= LARGEST))
    return FALSE;
  *out = value;
  return TRUE;
}

const char *
check_text (CheckRow   *row,
            const char *name)
{
  const char *text = g_hash_table_lookup (row->inputs, name);

  if (text != NULL)
    return text;
  check_bad_input (row, name);
  return "";
}

double
check_number (CheckRow   *row,
              const char *name)
{
  double value = 0;

  if (!read_number (check_text (row, name), &value))
    check_bad_input (row, name);
  return value;
}

double
check_number_or (CheckRow   *row,
                 const char *name,
                 double      fallback)
{
  return check_has (row, name) ? check_number (row, name) : fallback;
}

double
check_cents (CheckRow   *row,
             const char *name)
{
  return 100 * check_number (row, name);
}

double
check_cents_or (CheckRow   *row,
                const char *name,
                double      fallback)
{
  return check_has (row, name) ? check_cents (row, name) : fallback;
}

double
check_frac (CheckRow   *row,
            const char *name)
{
  return check_number (row, name) / 100;
}

double
check_frac_or (CheckRow   *row,
               const char *name,
               double      fallback)
{
  return check_has (row, name) ? check_frac (row, name) : fallback;
}

static const double *
read_list (CheckRow   *row,
           const char *name,
           double      scale,
           gsize      *n)
{
  g_auto(GStrv) parts = g_strsplit (check_text (row, name), "|", -1);
  gsize length = g_strv_length (parts);
  double *list;

  if (length == 0 || (*n != 0 && *n != length))
    {
      /* The caller may go on with the length that it asked for. */
      check_bad_input (row, name);
      length = MAX (*n, 1);
      list = g_new0 (double, length);
    }
  else
    {
      list = g_new0 (double, length);
      for (gsize i = 0; i < length; i++)
        if (!read_number (parts[i], &list[i]))
          check_bad_input (row, name);
    }
  for (gsize i = 0; i < length; i++)
    list[i] *= scale;
  g_ptr_array_add (row->lists, list);
  *n = length;
  return list;
}

const double *
check_list (CheckRow   *row,
            const char *name,
            gsize      *n)
{
  return read_list (row, name, 1, n);
}

const double *
check_cents_list (CheckRow   *row,
                  const char *name,
                  gsize      *n)
{
  return read_list (row, name, 100, n);
}

double
check_cents_sum_or (CheckRow   *row,
                    const char *name)
{
  gsize n = 0;
  const double *list;
  double sum = 0;

  if (!check_has (row, name))
    return 0;
  list = check_cents_list (row, name, &n);
  for (gsize i = 0; i < n; i++)
    sum += list[i];
  return sum;
}

int
check_word (CheckRow           *row,
            const char         *name,
            const char * const *words,
            int                 fallback)
{
  const char *text;

  if (!check_has (row, name) && fallback >= 0)
    return fallback;
  text = check_text (row, name);
  for (int i = 0; words[i] != NULL; i++)
    if (g_str_equal (words[i], text))
      return i;
  check_bad_input (row, name);
  return MAX (fallback, 0);
}

gsize
check_item (CheckRow *row,
            gsize     n)
{
  double item = check_number_or (row, "item", 1);

  if (item >= 1 && item <= (double) n && item == floor (item))
    return (gsize) item - 1;
  check_bad_input (row, "item");
  return 0;
}

static const CheckTopic *
topic_by_name (const CheckTopic * const *areas,
               const char               *name)
{
  for (; *areas != NULL; areas++)
    for (const CheckTopic *topic = *areas; topic->name != NULL; topic++)
      if (g_str_equal (topic->name, name))
        return topic;
  return NULL;
}

/* The ask in the unit of the row; else the first one of that name. */
static const CheckAsk *
ask_by_name (const CheckTopic *topic,
             const char       *name,
             const char       *unit)
{
  const CheckAsk *found = NULL;

  for (const CheckAsk *ask = topic->asks; ask->name != NULL; ask++)
    if (g_str_equal (ask->name, name))
      {
        if (g_str_equal (ask->unit, unit))
          return ask;
        if (found == NULL)
          found = ask;
      }
  return found;
}

/* "c#" is the name of c1, c2 and so on. */
static gboolean
name_fits (const char *name,
           const char *known)
{
  gsize n = strlen (known);

  if (n == 0 || known[n - 1] != '#')
    return g_str_equal (name, known);
  return strncmp (name, known, n - 1) == 0 && name[n - 1] >= '1' && name[n - 1] <= '9'
         && strspn (name + n - 1, "0123456789") == strlen (name + n - 1);
}

static gboolean
topic_knows (const CheckTopic *topic,
             const char       *name)
{
  g_auto(GStrv) known = g_strsplit (topic->inputs, " ", -1);

  for (gsize i = 0; known[i] != NULL; i++)
    if (*known[i] != '\0' && name_fits (name, known[i]))
      return TRUE;
  return FALSE;
}

/* name=value;name=value;ask=what */
static void
read_inputs (CheckRow         *row,
             const CheckTopic *topic,
             const char       *text)
{
  g_auto(GStrv) pairs = g_strsplit (text, ";", -1);

  for (gsize i = 0; pairs[i] != NULL; i++)
    {
      char *equals = strchr (pairs[i], '=');
      g_autofree char *name = NULL;

      if (equals == NULL)
        {
          check_bad_input (row, *pairs[i] != '\0' ? pairs[i] : "(empty)");
          continue;
        }
      name = g_strndup (pairs[i], (gsize) (equals - pairs[i]));
      if (g_str_equal (name, "ask") && row->ask == NULL)
        row->ask = g_strdup (equals + 1);
      else if (g_hash_table_contains (row->inputs, name) || !topic_knows (topic, name))
        check_bad_input (row, name);
      else
        g_hash_table_insert (row->inputs, g_steal_pointer (&name), g_strdup (equals + 1));
    }
}

/* Digits behind the point of a printed number. */
static int
printed_digits (const char *text)
{
  const char *point = strchr (text, '.');

  return point != NULL ? (int) strspn (point + 1, "0123456789") : 0;
}

/* Whether @got is the @expected of the file; FALSE with *@out_bad set if the
 * file's own value or tolerance cannot be read. */
static gboolean
agrees (double      got,
        const char *expected,
        const char *tolerance,
        gboolean   *out_bad)
{
  double want = 0;
  double within = 0;

  *out_bad = FALSE;
  if (g_str_equal (tolerance, "range"))
    {
      g_auto(GStrv) ends = g_strsplit (expected, "..", 2);
      double low = 0;
      double high = 0;

      if (g_strv_length (ends) != 2 || !read_number (ends[0], &low)
          || !read_number (ends[1], &high) || low > high)
        *out_bad = TRUE;
      within = STEAD_ROUND_NOISE * MAX (1, fabs (high));
      return !*out_bad && got >= low - within && got <= high + within;
    }
  if (!read_number (expected, &want))
    {
      *out_bad = TRUE;
      return FALSE;
    }
  if (g_str_equal (tolerance, "exact"))
    {
      int digits = printed_digits (expected);

      if (strpbrk (expected, "eE") != NULL || digits > 15)
        {
          *out_bad = TRUE;
          return FALSE;
        }
      return fabs (stead_round_digits (got, digits) - want) < 0.01 * pow (10, -digits);
    }
  if (g_str_has_suffix (tolerance, "%"))
    {
      g_autofree char *percent = g_strndup (tolerance, strlen (tolerance) - 1);

      *out_bad = !read_number (percent, &within) || within < 0;
      within *= fabs (want) / 100;
    }
  else
    *out_bad = !read_number (tolerance, &within) || within < 0;
  return !*out_bad && fabs (got - want) <= within + STEAD_ROUND_NOISE * MAX (1, fabs (want));
}

static char *
number_text (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.10g", value));
}

static CheckVerdict
compare (CheckRow           *row,
         const CheckFields  *fields,
         double              got,
         char              **out_says)
{
  g_autofree char *text = NULL;
  gboolean right;
  gboolean bad = FALSE;

  if (row->word != NULL)
    {
      text = g_strdup (row->word);
      bad = !g_str_equal (fields->tolerance, "exact");
      right = g_str_equal (row->word, fields->expected);
    }
  else if (!isfinite (got))
    {
      text = row->none != NULL ? g_strdup_printf ("none (%s)", row->none) : g_strdup ("none");
      right = FALSE;
    }
  else
    {
      text = number_text (got);
      right = agrees (got, fields->expected, fields->tolerance, &bad);
    }
  if (bad)
    {
      *out_says = g_strdup_printf ("unknown expected %s or tolerance %s",
                                   fields->expected, fields->tolerance);
      return CHECK_UNKNOWN;
    }
  *out_says = right ? g_strdup ("ok")
                    : g_strdup_printf ("differs got=%s expected=%s", text, fields->expected);
  return right ? CHECK_OK : CHECK_DIFFERS;
}

CheckVerdict
check_row_run (const CheckFields         *fields,
               const CheckTopic * const  *areas,
               char                     **out_says)
{
  g_auto(CheckRow) row = { 0 };
  const CheckTopic *topic = topic_by_name (areas, fields->topic);
  const CheckAsk *ask = NULL;
  double got;

  if (topic == NULL)
    {
      *out_says = g_strdup_printf ("unknown topic %s", fields->topic);
      return CHECK_UNKNOWN;
    }
  row.inputs = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  row.lists = g_ptr_array_new_with_free_func (g_free);
  read_inputs (&row, topic, fields->inputs);
  if (row.problem == NULL && row.ask != NULL)
    ask = ask_by_name (topic, row.ask, fields->unit);
  if (row.problem == NULL && ask == NULL)
    note (&row, "ask", row.ask != NULL ? row.ask : "(none)");
  if (row.problem == NULL && !g_str_equal (ask->unit, fields->unit))
    row.problem = g_strdup_printf ("unit %s (the ask is in %s)", fields->unit, ask->unit);
  if (row.problem == NULL)
    {
      got = ask->func (&row);
      if (g_str_has_prefix (ask->unit, "USD"))
        got /= 100;
    }
  if (row.problem != NULL)
    {
      *out_says = g_strdup_printf ("unknown %s", row.problem);
      return CHECK_UNKNOWN;
    }
  return compare (&row, fields, got, out_says);
}
