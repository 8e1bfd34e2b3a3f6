/* asked.c - whether a segment can have a pattern, asked again and again: answers are kept */
#include "bond/asked.h"

#include <string.h>

#define ANEW 20                       /* questions that an answer counts as */
#define STEPS_MOST ((gint64) 8000000) /* intervals looked at, in all */

/* All that an answer hangs on, but for how many cuts are allowed. */
typedef struct
{
  guint hash, n, room;
  gint32 fewest, most; /* the answer: fewest cuts if no more than `most` are allowed, else NEVER */
  gint32 words[];
} Question;

struct Asked
{
  const Geometry *geometry;
  Reach *reach;
  GHashTable *known;  /* of Question */
  Question *question; /* that is put together */
  gint64 work;
};

static guint
question_hash (gconstpointer key)
{
  return ((const Question *) key)->hash;
}

static gboolean
question_equal (gconstpointer a, gconstpointer b)
{
  const Question *p = a, *q = b;

  return p->hash == q->hash && p->n == q->n
         && memcmp (p->words, q->words, sizeof (gint32) * p->n) == 0;
}

Asked *
asked_new (const Geometry *geometry)
{
  Asked *asked = g_new0 (Asked, 1);

  asked->geometry = geometry;
  asked->reach = reach_new (geometry);
  asked->known = g_hash_table_new_full (question_hash, question_equal, g_free, NULL);
  return asked;
}

void
asked_free (Asked *asked)
{
  if (asked == NULL)
    return;
  reach_free (asked->reach);
  g_hash_table_unref (asked->known);
  g_free (asked->question);
  g_free (asked);
}

static void
begin_question (Asked *asked, guint words)
{
  Question *question = asked->question;

  if (question == NULL || question->room < words)
    {
      question = g_realloc (question, sizeof (Question) + sizeof (gint32) * 2 * words);
      question->room = 2 * words;
    }
  question->hash = 2166136261u; /* FNV-1a, by words */
  question->n = 0;
  asked->question = question;
}

static inline void
add_word (Question *question, gint32 word)
{
  question->words[question->n++] = word;
  question->hash = (question->hash ^ (guint) word) * 16777619u;
}

static void
add_intervals (Question *question, const Interval *intervals, gint32 n)
{
  add_word (question, n);
  for (gint32 i = 0; i < n; i++)
    {
      add_word (question, intervals[i].from);
      add_word (question, intervals[i].to);
    }
}

static void
put_together (Asked *asked, gint32 segment, const Ask *ask, gint32 ends)
{
  Question *question;

  begin_question (asked, (guint) (6 + 2 * (ask->n_needed + ask->n_barred)));
  question = asked->question;
  add_word (question, geometry_like (asked->geometry, segment));
  add_word (question, ends);
  add_word (question, ask->least);
  add_word (question, ask->strips);
  add_intervals (question, ask->needed, ask->n_needed);
  add_intervals (question, ask->barred, ask->n_barred);
  question->hash ^= question->hash >> 15;
}

gboolean
asked_can_be (Asked *asked, gint32 segment, const Ask *ask, gint32 ends, gint32 most)
{
  Question *known;

  if (reach_work (asked->reach) > STEPS_MOST)
    return TRUE;
  asked->work++;
  put_together (asked, segment, ask, ends);
  known = g_hash_table_lookup (asked->known, asked->question);
  if (known != NULL && (known->fewest <= most || known->most >= most))
    return known->fewest <= most;
  if (known == NULL)
    {
      known = g_memdup2 (asked->question, sizeof (Question) + sizeof (gint32) * asked->question->n);
      g_hash_table_add (asked->known, known);
    }
  asked->work += ANEW;
  known->most = most;
  known->fewest = reach_fewest_to (asked->reach, geometry_segment (asked->geometry, segment), ask,
                                   ends, most);
  return known->fewest <= most;
}

gint64
asked_work (const Asked *asked)
{
  return asked->work;
}

Reach *
asked_reach (Asked *asked)
{
  return asked->reach;
}
