/* stead-packet-answer.h - "What is to be shown of this student, or of this team?"
 *
 * A packet gathers what the farm knows already; nothing is typed twice.  Each section is a
 * list of blocks that the paper prints and the window previews, and a list of figures.
 *
 * Invariants:
 *  1. Each figure has a mark, counted from 1 through the packet, and leads to its entries.
 *  2. A section of which nothing is recorded says so and is not left out.
 *  3. Nobody who is not of the packet is named unless the packet says so and that person
 *     agreed; a picture is shown only if everybody on it agreed.
 */
#pragma once

#include "answer/stead-batch-card.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-event-scores.h"
#include "store/stead-batch-repo.h"
#include "store/stead-event-repo.h"
#include "store/stead-packet-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_BLOCK_TEXT,         /* markup */
  STEAD_BLOCK_SUBHEADING,   /* plain; so the two below */
  STEAD_BLOCK_NOTE,
  STEAD_BLOCK_CAUTION,
  STEAD_BLOCK_TABLE,
  STEAD_BLOCK_CONTENTS,     /* a table: number and title of each section; paper adds the page */
  STEAD_BLOCK_PICTURE,      /* @text: its caption */
  STEAD_BLOCK_MONTHS,       /* a chart; @text: what it shows, plain */
  STEAD_BLOCK_SCORES,       /* likewise */
} SteadPacketBlockKind;

/* What the farm gave in each month of the packet. */
typedef struct
{
  SteadBatchKind  kind;     /* of the batches that gave it */
  GPtrArray      *names;    /* of utf8: "Aug" */
  GArray         *values;   /* of double, as many: eggs, lb or kg, pieces */
} SteadPacketMonths;

typedef struct
{
  SteadPacketBlockKind  kind;
  char                 *text;     /* (nullable) */
  SteadCardTable       *table;    /* (nullable) */
  GBytes               *jpeg;     /* (nullable) */
  SteadPacketMonths    *months;   /* (nullable) */
  SteadEventScores     *scores;   /* (nullable): with a line at least */
} SteadPacketBlock;

/* What a figure is made of, or where a thing is mended. */
typedef struct
{
  char        *text;
  SteadTarget  target;    /* STEAD_TARGET_NONE: see the two below */
  gint64       id;
  gint64       line_id;      /* of the cash book, 0: none; its card has it */
  gint64       account_id;   /* 0: none; so too.  With neither it is a sum of the days before */
} SteadPacketEntry;

typedef struct
{
  int        mark;        /* from 1 */
  char      *text;        /* "Hours in all: 41:30" */
  GPtrArray *entries;     /* of SteadPacketEntry; at most STEAD_PACKET_MOST_ENTRIES */
  guint      n_entries;   /* all of them */
} SteadPacketFigure;

#define STEAD_PACKET_MOST_ENTRIES 60

typedef struct
{
  const char  *key;
  const char  *title;     /* translated, never freed */
  gboolean     is_blank;  /* nothing is recorded */
  char        *lack;      /* (nullable): what is missing, as a person mends it */
  SteadTarget  target;    /* where it is mended; STEAD_TARGET_NONE: in the packet itself */
  gint64       target_id;
  GPtrArray   *blocks;    /* of SteadPacketBlock */
  GPtrArray   *figures;   /* of SteadPacketFigure */
} SteadPacketPart;

typedef struct
{
  SteadFarm   *farm;
  SteadPacket *packet;
  SteadEvent  *event;     /* (nullable) */
  GPtrArray   *people;    /* of SteadEventPerson: whose packet it is, one or more */
  char        *whose;     /* "Maya R.", "Maya R., Devon K." */
  GPtrArray   *parts;     /* of SteadPacketPart, as chosen */
  int          n_blank;
  int          n_marks;
  GPtrArray   *whys;      /* of SteadWhy: hours, what they would be worth, earned, net worth: as far as they are in it */
  char        *sentence;  /* markup */
} SteadPacketAnswer;

void stead_packet_answer_free (SteadPacketAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPacketAnswer, stead_packet_answer_free)

/* What packets of one run share, so that the farm's statements are made once for a whole
 * class; of one farm in one state. */
typedef struct _SteadPacketSource SteadPacketSource;

SteadPacketSource *stead_packet_source_new  (void);
void               stead_packet_source_free (SteadPacketSource *source);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPacketSource, stead_packet_source_free)

/**
 * stead_packet_answer_new:
 * @source: (nullable): shared with other packets
 */
SteadPacketAnswer *stead_packet_answer_new  (SteadStore         *store,
                                             gint64              packet_id,
                                             SteadPacketSource  *source,
                                             GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same of a packet that need not be saved. */
SteadPacketAnswer *stead_packet_answer_of   (SteadStore         *store,
                                             const SteadPacket  *packet,
                                             SteadPacketSource  *source,
                                             GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Title of a section by its key: "Hours by activity". */
const char *stead_packet_section_title (const char *key);

/* All sections, the school year of @day up to @day: a packet to begin with. */
SteadPacket *stead_packet_usual (SteadStore *store, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadPerson): everybody who is still here, by name. */
GPtrArray *stead_packet_people (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (transfer full) (element-type SteadEventPerson): whose packet it is; empty: of a team that nobody is in yet */
GPtrArray *stead_packet_whose  (SteadStore *store, const SteadPacket *packet, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* As the others of answer/stead-subject.h: a packet by its name, the first one for %NULL. */
gboolean stead_subject_packet (SteadStore *store, const char *name, gint64 *out_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
