/* stead-import-private.h - the parts of the import: text, table, columns, judges.
 *
 * Data goes one way: bytes of the file → UTF-8 text → rows of cells → columns
 * by their names → facts.  Each step only ever reports a fault; none mends one
 * in silence.
 */
#pragma once

#include "answer/stead-import-answer.h"
#include "core/stead-quantity.h"
#include "store/stead-crop-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-receipt-repo.h"

G_BEGIN_DECLS

/* --- text ------------------------------------------------------------------ */

#define STEAD_IMPORT_MAX_BYTES (64 * 1024 * 1024)

typedef enum
{
  STEAD_ENCODING_UTF8,
  STEAD_ENCODING_UTF16,
  STEAD_ENCODING_WINDOWS_1252,
} SteadEncoding;

typedef struct
{
  char          *text;        /* UTF-8; a NUL of the file has become U+0001 */
  gsize          length;
  SteadEncoding  encoding;
  char           separator;   /* ',', ';' or tab */
  guint          first_line;  /* of the text in the file: 2 after "sep=;" */
} SteadImportText;

void stead_import_text_clear (SteadImportText *text);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadImportText, stead_import_text_clear)

/* Refuses a folder, a file too large, unreadable, empty, or plainly no text. */
gboolean stead_import_text_read (const char       *path,
                                 SteadImportText  *out,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- table ------------------------------------------------------------------ */

/* Longest cell that is taken, in bytes. */
#define STEAD_IMPORT_MAX_CELL 4000

/* Most columns that are read; what lies beyond is a row with too many cells. */
#define STEAD_IMPORT_MAX_COLUMNS 100

typedef void (*SteadImportProgress) (double share, gpointer data);

/* (transfer full) (element-type SteadImportRow): the rows as they stand, the header
 * first.  A row whose last quotation mark is never closed comes as WRONG. */
GPtrArray *stead_import_table_read (const SteadImportText *text,
                                    GCancellable          *cancellable,
                                    GError               **error) G_GNUC_WARN_UNUSED_RESULT;

void stead_import_row_free (SteadImportRow *row);

/* --- columns ----------------------------------------------------------------- */

typedef enum
{
  STEAD_COLUMN_NONE,      /* not used */
  STEAD_COLUMN_DATE,
  STEAD_COLUMN_EGGS,
  STEAD_COLUMN_CRACKED,
  STEAD_COLUMN_FEED,
  STEAD_COLUMN_DEATHS,
  STEAD_COLUMN_CULLED,
  STEAD_COLUMN_REASON,
  STEAD_COLUMN_LEFT_OUT,
  STEAD_COLUMN_NOTE,
  STEAD_COLUMN_PERSON,
  STEAD_COLUMN_SUPPLIER,
  STEAD_COLUMN_ITEM,
  STEAD_COLUMN_KIND,
  STEAD_COLUMN_QUANTITY,
  STEAD_COLUMN_UNIT,
  STEAD_COLUMN_COST,
  STEAD_COLUMN_GIFT,
  STEAD_COLUMN_BEST_BY,
  STEAD_COLUMN_REFERENCE,
  STEAD_COLUMN_TEMPERATURE,
  STEAD_COLUMN_REFUSED,
  STEAD_COLUMN_GROUP,
  STEAD_COLUMN_COUNT,
  STEAD_COLUMN_WEIGHT,        /* of one fish */
  STEAD_COLUMN_MEAN_WEIGHT,
  STEAD_COLUMN_TOTAL_WEIGHT,
  STEAD_COLUMN_LENGTH,
  STEAD_COLUMN_HIGHEST,       /* of the day's temperatures */
  STEAD_COLUMN_LOWEST,
  STEAD_COLUMN_HUMIDITY,      /* percent */
  STEAD_COLUMN_LIGHT,         /* mol/m² a day */
  STEAD_COLUMN_PICKED,
  STEAD_COLUMN_GRADE,
  STEAD_COLUMN_THROWN,
  STEAD_COLUMN_AMOUNT,        /* of money, signed */
  STEAD_COLUMN_MONEY_IN,
  STEAD_COLUMN_MONEY_OUT,
  STEAD_COLUMN_TEXT,          /* what the bank says of it */
  STEAD_COLUMN_CLASS_YEAR,
  STEAD_COLUMN_ROLE,
  STEAD_COLUMN_TIME,          /* of the day, where it does not stand with the date */
} SteadColumn;

#define STEAD_N_COLUMNS (STEAD_COLUMN_TIME + 1)

typedef struct
{
  int              at[STEAD_N_COLUMNS];    /* index of the cell; -1: not there */
  const SteadUnit *unit[STEAD_N_COLUMNS];  /* named in the header, "Feed (kg)"; NULL: not named */
} SteadColumns;

/* Finds what each name of the header means; refuses a header that cannot do. */
gboolean stead_import_columns_find (SteadImportKind     kind,
                                    const char * const *header,
                                    SteadColumns       *out,
                                    GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Date", "Feed, lb": what a column was taken for, in the person's language. */
char *stead_import_column_name (SteadColumn      column,
                                const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/* --- cells -------------------------------------------------------------------- */

/* What the judges share. */
typedef struct
{
  SteadStore          *store;
  SteadImportKind      kind;
  SteadFarm           *farm;
  SteadFlock          *flock;      /* (nullable): of a log */
  SteadCrop           *crop;       /* (nullable): of picks, or whose thermometer it is */
  SteadFish           *fish;       /* (nullable): of a log or of weighings */
  GPtrArray           *groups;     /* (nullable) of SteadFish: that a column may name */
  GPtrArray           *people;     /* of SteadPerson */
  GPtrArray           *items;      /* of SteadItem; for receipts */
  gint64               account_id;         /* of a bank's lines */
  SteadDay             account_opened_on;
  SteadDay             account_agreed_to;  /* STEAD_DAY_NONE: no statement agrees yet */
  gint64               place_id;           /* of a cooler's logger */
  gint64               pot_id, line_id;    /* of a pot's logger */
  SteadDay             first_day;          /* nothing of the pot can be from before that */
  const SteadColumns  *columns;
  SteadDateOrder       order;      /* asked for or found; UNKNOWN: neither */
  SteadDay             today;
  gboolean             ambiguous;  /* a date was met that needs the order */
  GCancellable        *cancellable;
  SteadImportProgress  progress;
  gpointer             data;
} SteadImportJudge;

/* The cell of a column, "" if there is none. */
const char *stead_import_cell (const SteadImportJudge *judge,
                               const SteadImportRow   *row,
                               SteadColumn             column);

/* Marks @row as wrong at a column; takes @message over.  Returns: %FALSE */
gboolean stead_import_wrong (const SteadImportJudge *judge,
                             SteadImportRow         *row,
                             SteadColumn             column,
                             char                   *message);

/* Marks @row as skipped; takes @message over. */
void stead_import_skip (SteadImportRow *row,
                        char           *message);

/* Control signs and cells that are too long make a row wrong. */
gboolean stead_import_check_cells (SteadImportRow *row);

/* Whether all cells of the row are empty. */
gboolean stead_import_row_is_blank (const SteadImportRow *row);

/* The order of all-digit dates that the whole file shows; UNKNOWN if it shows none. */
SteadDateOrder stead_import_find_order (GPtrArray          *rows,
                                        const SteadColumns *columns);

gboolean stead_import_read_day (SteadImportJudge *judge,
                                SteadImportRow   *row,
                                SteadColumn       column,
                                SteadDay         *out_day);

/* A number of pieces; @out is left alone if the cell is empty. */
gboolean stead_import_read_count (const SteadImportJudge *judge,
                                  SteadImportRow         *row,
                                  SteadColumn             column,
                                  gint32                 *out);

/* "yes", "no", "x", in English and Spanish; an empty cell and each of @no are no, each of
 * @yes is yes (both (nullable), folded).  %FALSE with @row marked wrong if it is neither. */
gboolean stead_import_read_yes (const SteadImportJudge *judge,
                                SteadImportRow         *row,
                                SteadColumn             column,
                                const char * const     *yes,
                                const char * const     *no,
                                gboolean               *out);

/* Text without the apostrophe that keeps a spreadsheet from reckoning it; NULL if empty.  In one
 * line, unless it is a note. */
char *stead_import_read_text (const SteadImportJudge *judge,
                              const SteadImportRow   *row,
                              SteadColumn             column) G_GNUC_WARN_UNUSED_RESULT;

/* 0 if the cell is empty, -1 if nobody on the list is called so. */
gint64 stead_import_find_person (const SteadImportJudge *judge,
                                 const char             *name);

/* Share done, and whether to stop: between rows. */
gboolean stead_import_go_on (const SteadImportJudge *judge,
                             guint                   done,
                             guint                   all,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/* A weight, a length or a temperature in its unit; @out is left alone if the cell is empty.
 * @fallback: the unit where neither the cell nor the header names one. */
gboolean stead_import_read_quantity (const SteadImportJudge *judge,
                                     SteadImportRow         *row,
                                     SteadColumn             column,
                                     const SteadUnit        *fallback,
                                     double                 *out_base);

/* The person of the row; a name that is not on the list goes into @note: nothing is lost. */
void stead_import_read_person (const SteadImportJudge  *judge,
                               const SteadImportRow    *row,
                               gint64                  *out_id,
                               char                   **note);

/* Blank rows are skipped here.  Returns: whether the cells of @row are to be read */
gboolean stead_import_is_to_read (SteadImportRow *row);

/* --- the kinds ------------------------------------------------------------------- */

/* What makes one kind of table: a file of its own has them. */
typedef struct
{
  const char *name;   /* on the command line */

  /* Fills in what @judge needs besides; @batch_id: 0 for the only one there is. */
  gboolean  (*prepare)     (SteadImportJudge *judge, gint64 batch_id, GError **error);
  /* Whether the columns that were found will do, and what they should be. */
  gboolean  (*is_complete) (const SteadColumns *columns);
  const char *needs;       /* untranslated sentence */
  /* Judges every row and hangs a fact on each that can be taken. */
  gboolean  (*judge)       (SteadImportJudge *judge, GPtrArray *rows, GError **error);
  /* What a row will be recorded as, in words. */
  char     *(*understood)  (const SteadFarm *farm, gconstpointer fact);
  void      (*free_fact)   (gpointer fact);
  /* Writes the facts of @rows in state TAKE; within an action. */
  gboolean  (*write)       (GPtrArray *rows, SteadStore *store, GCancellable *cancellable,
                            SteadImportProgress progress, gpointer data, GError **error);
} SteadImportMethods;

extern const SteadImportMethods stead_import_flock_log, stead_import_receipts, stead_import_fish_log,
                                stead_import_weighings, stead_import_temperatures, stead_import_picks,
                                stead_import_bank, stead_import_people, stead_import_cooler, stead_import_pot;

const SteadImportMethods *stead_import_methods (SteadImportKind kind);

/* --- dated rows -------------------------------------------------------------------- */

typedef SteadDay (*SteadImportDayOf) (gconstpointer fact);

/* (transfer container) (element-type SteadImportRow): rows that have a fact, by its day, then
 * by their lines. */
GPtrArray *stead_import_rows_by_day (GPtrArray        *rows,
                                     SteadImportDayOf  day_of) G_GNUC_WARN_UNUSED_RESULT;

/* Whether the farm, or an earlier line, says what @row says; it is skipped then.
 * @seen: facts to the lines that they stand in, NULL for the farm's own */
gboolean stead_import_is_double (GHashTable     *seen,
                                 SteadImportRow *row);

/* Only rows that are taken keep their fact. */
void stead_import_drop_facts (GPtrArray      *rows,
                              GDestroyNotify  free_fact);

/* The one asked for, or with an id of 0 the only one under way, or the only one there ever was. */
SteadFlock *stead_import_find_flock (SteadStore *store, gint64 flock_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadFish  *stead_import_find_fish  (SteadStore *store, gint64 fish_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCrop  *stead_import_find_crop  (SteadStore *store, gint64 crop_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- things of the store room ---------------------------------------------------- */

typedef struct
{
  char            *name;
  gint64           id;             /* 0: made when the row is taken */
  SteadItemKind    kind;           /* of one to be made */
  const SteadUnit *unit;
  double           quantity_base;  /* above 0 */
} SteadImportItem;

/* What stands in the columns of item, kind, quantity and unit.  @out->name is to be freed,
 * whatever comes of it. */
gboolean stead_import_read_item (const SteadImportJudge *judge,
                                 SteadImportRow         *row,
                                 SteadImportItem        *out);

/* Makes the item, if it is a new one.  @made: folded names → ids of those made before, since
 * two rows may name the same. */
gboolean stead_import_make_item (SteadStore       *store,
                                 GHashTable       *made,
                                 SteadImportItem  *wanted,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
