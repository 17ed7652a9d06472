/* stead-packet-paper.c - the packet of a student or a team, on paper. */
#include "config.h"

#include "answer/stead-packet-answer.h"
#include "paper/stead-output.h"
#include "paper/stead-packet-figures.h"
#include "paper/stead-packet-paper.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-pdf.h"
#include "paper/stead-picture-figure.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#define PICTURE_HEIGHT 220.0

/* Texts share what figures leave, by their longest, within reason. */
#define LEAST_SHARE 8

/* A column of numbers and codes is as wide as it needs to be. */
#define SHORT 9
#define MOST_SHARE 40

/* --- blocks ------------------------------------------------------------------------- */

static double
share_of (const SteadCardTable *table,
          int                   column)
{
  long longest = g_utf8_strlen (table->titles[column], -1) + 2;
  gboolean is_alone = TRUE;

  if (table->is_figure[column])
    return 0;
  for (guint i = 0; i < table->rows->len; i++)
    {
      const char *cell = ((const SteadCardRow *) table->rows->pdata[i])->cells[column];

      longest = MAX (longest, cell != NULL ? g_utf8_strlen (cell, -1) : 0);
    }
  for (int i = 0; i < table->n_columns; i++)
    is_alone = is_alone && (i == column || table->is_figure[i]);
  if (longest <= SHORT && column == 0 && !is_alone)
    return 0;
  return (double) CLAMP (longest, LEAST_SHARE, MOST_SHARE);
}

static gboolean
has_head (const SteadCardTable *table)
{
  for (int i = 0; i < table->n_columns; i++)
    if (*table->titles[i] != '\0')
      return TRUE;
  return FALSE;
}

static void
add_table (SteadPages           *pages,
           const SteadCardTable *table)
{
  gboolean head = has_head (table);
  SteadPagesColumn columns[STEAD_CARD_COLUMNS];

  if (table->rows->len == 0)
    return;
  for (int i = 0; i < table->n_columns; i++)
    columns[i] = (SteadPagesColumn) { head ? table->titles[i] : NULL,
                                      table->is_figure[i] ? STEAD_ALIGN_RIGHT : STEAD_ALIGN_LEFT, share_of (table, i) };
  stead_pages_add_table (pages, columns, table->n_columns);
  for (guint i = 0; i < table->rows->len; i++)
    {
      const SteadCardRow *row = table->rows->pdata[i];
      gboolean total = table->has_total && i + 1 == table->rows->len;
      const char *cells[STEAD_CARD_COLUMNS];

      for (int column = 0; column < table->n_columns; column++)
        cells[column] = row->cells[column] != NULL ? row->cells[column] : "–";
      stead_pages_add_row (pages, total ? STEAD_ROW_TOTAL : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
    }
}

/* A picture that cannot be read is said to be so, and its caption stays. */
static void
add_picture (SteadPages             *pages,
             const SteadPacketBlock *block)
{
  if (block->jpeg != NULL && stead_picture_figure_add (pages, block->jpeg, PICTURE_HEIGHT))
    stead_pages_keep_last (pages);
  else
    stead_pages_add_note (pages, _("This picture cannot be read."));
  stead_pages_add_note (pages, block->text);
}

/* The words stand over the chart, and on its page. */
static void
add_chart (SteadPages             *pages,
           const SteadPacketBlock *block)
{
  stead_pages_add_note (pages, block->text);
  stead_pages_keep_last (pages);
  if (block->months != NULL)
    stead_packet_figures_add_months (pages, block->months);
  else if (block->scores != NULL)
    stead_packet_figures_add_scores (pages, block->scores);
}

static void
add_block (SteadPages             *pages,
           const SteadPacketBlock *block)
{
  switch (block->kind)
    {
    case STEAD_BLOCK_SUBHEADING: stead_pages_add_subheading (pages, block->text); break;
    case STEAD_BLOCK_NOTE:       stead_pages_add_note (pages, block->text); break;
    case STEAD_BLOCK_CAUTION:    stead_pages_add_caution (pages, block->text); break;
    case STEAD_BLOCK_CONTENTS:
    case STEAD_BLOCK_TABLE:      add_table (pages, block->table); break;
    case STEAD_BLOCK_PICTURE:    add_picture (pages, block); break;
    case STEAD_BLOCK_MONTHS:
    case STEAD_BLOCK_SCORES:     add_chart (pages, block); break;
    case STEAD_BLOCK_TEXT:
    default:                     stead_pages_add_text (pages, block->text); break;
    }
}

/* --- the contents -------------------------------------------------------------------- */

/* Their rows, one a section, and the next of them whose page is looked for. */
typedef struct
{
  const GPtrArray *parts;
  GPtrArray       *rows;   /* of SteadPagesRow, not owned; empty without a cover */
  guint            next;
} Contents;

/* Pages are known only once all is laid out; a number takes no more room than the word "Page". */
static void
fill_page (const char *text,
           int         page,
           double      y,
           gpointer    data)
{
  Contents *contents = data;
  g_autofree char *number = NULL;

  if (contents->next >= contents->rows->len
      || g_strcmp0 (((const SteadPacketPart *) contents->parts->pdata[contents->next])->title, text) != 0)
    return;
  number = g_strdup_printf ("%d", page + 1);
  stead_pages_row_fill (contents->rows->pdata[contents->next], 2, number);
  contents->next++;
}

static void
add_contents (SteadPages             *pages,
              const SteadPacketBlock *block,
              Contents               *contents)
{
  const SteadCardTable *table = block->table;
  const SteadPagesColumn columns[] = {
    { table->titles[0], STEAD_ALIGN_RIGHT, 0 },
    { table->titles[1], STEAD_ALIGN_LEFT, 1 },
    { C_("contents of a packet", "Page"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < table->rows->len; i++)
    {
      const SteadCardRow *row = table->rows->pdata[i];

      g_ptr_array_add (contents->rows, stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                                                            (const char *[]) { row->cells[0], row->cells[1], "–" }));
    }
}

/* --- the packet ---------------------------------------------------------------------- */

/* Words that lead to a table go to its page, and so does a note with the words before it. */
static void
add_next (SteadPages      *pages,
          const GPtrArray *blocks,
          guint            at,
          Contents        *contents)
{
  const SteadPacketBlock *block = blocks->pdata[at];
  const SteadPacketBlock *next = at + 1 < blocks->len ? blocks->pdata[at + 1] : NULL;
  gboolean leads = next != NULL && (next->kind == STEAD_BLOCK_NOTE
                                    || (next->kind == STEAD_BLOCK_TABLE && next->table->rows->len > 0));

  if (block->kind == STEAD_BLOCK_CONTENTS)
    add_contents (pages, block, contents);
  else
    add_block (pages, block);
  if (leads && (block->kind == STEAD_BLOCK_TEXT || block->kind == STEAD_BLOCK_NOTE))
    stead_pages_keep_last (pages);
}

static SteadPages *
flow (const SteadImprint      *imprint,
      const SteadPacketAnswer *answer)
{
  g_autofree char *from = stead_day_format (answer->packet->from_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (answer->packet->to_on, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the first and the last day of a period. */
  g_autofree char *period = g_strdup_printf (_("%s to %s"), from, to);
  /* Translators: title of a document; a name, or the names of a team. */
  g_autofree char *title = g_strdup_printf (_("Packet of %s"), answer->whose);
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  Contents contents = { answer->parts, rows, 0 };
  SteadPages *pages = stead_pages_new (imprint, title, period);

  stead_pages_add_title (pages, title);
  if (g_strcmp0 (answer->packet->name, answer->whose) != 0 && answer->packet->name != NULL)
    {
      g_autofree char *name = g_markup_escape_text (answer->packet->name, -1);

      stead_pages_add_lead (pages, name);
    }
  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadPacketPart *part = answer->parts->pdata[i];

      stead_pages_add_heading (pages, part->title);
      for (guint k = 0; k < part->blocks->len; k++)
        add_next (pages, part->blocks, k, &contents);
    }
  stead_pages_settle (pages);
  stead_pages_headings (pages, fill_page, &contents);
  return pages;
}

static SteadPages *
pages_of (SteadStore               *store,
          const SteadPacketAnswer  *answer,
          GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);

  return imprint == NULL ? NULL : flow (imprint, answer);
}

SteadPages *
stead_packet_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_autoptr(SteadPacketAnswer) answer = NULL;
  gint64 id;

  if (!stead_subject_packet (store, of, &id, error)
      || (answer = stead_packet_answer_new (store, id, NULL, error)) == NULL)
    return NULL;
  return pages_of (store, answer, error);
}

/* --- a whole class ---------------------------------------------------------------------- */

struct _SteadPacketRun
{
  SteadStore        *store;
  char              *folder;
  GPtrArray         *packets;   /* of SteadPacket */
  GHashTable        *names;     /* of files that this run made */
  SteadPacketSource *source;
  guint              done;
};

void
stead_packet_run_free (SteadPacketRun *run)
{
  if (run == NULL)
    return;
  g_clear_object (&run->store);
  g_free (run->folder);
  g_clear_pointer (&run->packets, g_ptr_array_unref);
  g_clear_pointer (&run->names, g_hash_table_unref);
  stead_packet_source_free (run->source);
  g_free (run);
}

static gboolean
has_packet (GPtrArray *packets,
            gint64     person_id)
{
  for (guint i = 0; i < packets->len; i++)
    if (((const SteadPacket *) packets->pdata[i])->person_id == person_id)
      return TRUE;
  return FALSE;
}

static gboolean
add_usual (SteadPacketRun  *run,
           GError         **error)
{
  g_autoptr(GPtrArray) people = stead_packet_people (run->store, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      SteadPacket *packet;

      if (person->role != STEAD_PERSON_STUDENT || has_packet (run->packets, person->id))
        continue;
      packet = stead_packet_usual (run->store, stead_store_get_today (run->store), error);
      if (packet == NULL)
        return FALSE;
      packet->person_id = person->id;
      packet->name = g_strdup (person->name);
      g_ptr_array_add (run->packets, packet);
    }
  return people != NULL;
}

SteadPacketRun *
stead_packet_run_new (SteadStore  *store,
                      const char  *folder,
                      GError     **error)
{
  g_autoptr(SteadPacketRun) run = g_new0 (SteadPacketRun, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store) && folder != NULL, NULL);
  run->store = g_object_ref (store);
  run->folder = g_strdup (folder);
  run->source = stead_packet_source_new ();
  run->names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  run->packets = stead_packet_repo_list (store, error);
  if (run->packets == NULL || !add_usual (run, error))
    return NULL;
  if (run->packets->len == 0)
    {
      g_set_error_literal (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN,
                           _("There is no student and no packet. Enter the class first."));
      return NULL;
    }
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      int saved = errno;

      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (saved), _("The folder “%s” cannot be made: %s"), folder,
                   g_strerror (saved));
      return NULL;
    }
  return g_steal_pointer (&run);
}

/* "Maya R.pdf" of "Maya R."; signs that a file's name cannot bear become "-", and no two are alike. */
static char *
file_of (SteadPacketRun *run,
         const char     *name)
{
  g_autofree char *bare = g_strdup (name);
  g_autofree char *tried = NULL;

  g_strdelimit (bare, "/\\:*?\"<>|", '-');
  g_strstrip (bare);
  if (*bare == '.')
    *bare = '-';
  if (g_str_has_suffix (bare, "."))
    bare[strlen (bare) - 1] = '\0';
  tried = g_strdup_printf ("%s.pdf", bare);
  for (int i = 2; g_hash_table_contains (run->names, tried); i++)
    {
      g_free (tried);
      tried = g_strdup_printf ("%s %d.pdf", bare, i);
    }
  g_hash_table_add (run->names, g_strdup (tried));
  return g_build_filename (run->folder, tried, NULL);
}

gboolean
stead_packet_run_step (SteadPacketRun  *run,
                       GError         **error)
{
  const SteadPacket *packet;
  g_autoptr(SteadPacketAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GBytes) pdf = NULL;
  g_autofree char *path = NULL;

  g_return_val_if_fail (run != NULL && run->done < run->packets->len, FALSE);
  packet = run->packets->pdata[run->done++];
  answer = stead_packet_answer_of (run->store, packet, run->source, error);
  if (answer == NULL || (pages = pages_of (run->store, answer, error)) == NULL)
    return FALSE;
  pdf = stead_pdf_from_pages (pages, stead_imprint_language (), error);
  if (pdf == NULL)
    return FALSE;
  path = file_of (run, packet->name);
  if (!stead_output_write (path, pdf, error))
    return FALSE;
  /* What is about one student is for the owner's eyes. */
  g_chmod (path, 0600);
  return TRUE;
}

guint
stead_packet_run_count (const SteadPacketRun *run)
{
  return run->packets->len;
}

guint
stead_packet_run_done (const SteadPacketRun *run)
{
  return run->done;
}
