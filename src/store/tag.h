/* tag.h - one start tag: its attributes, each with the line it stands on */
#pragma once

#include "store/element.h"

typedef struct
{
  char *name;   /* without prefix */
  char *prefix; /* NULL: none */
  char *space;  /* namespace; NULL: none */
  char *value;
  int line; /* in the file, from 1 */
} Attribute;

typedef struct
{
  char *name;         /* of the element, without prefix */
  char *prefix;       /* NULL: none */
  char *space;        /* its namespace; NULL: none */
  int line;           /* where the tag begins */
  GArray *attributes; /* Attribute */
  GPtrArray
      *namespaces; /* char *: prefix ("" is none) and namespace by turns, those declared here */
} Tag;

/* Copies of what libxml2's startElementNs gives. `text` is the file, `end` the place in it where
 * the parser stands: behind the tag's last attribute. `lines` are counted up to `from`, the place
 * of the last call, and both are moved on, so that each line of the file is counted once. */
typedef struct
{
  const char *text;
  const char *from;
  int line;
} Place;

Tag *tag_new (Place *place, const char *end, const guchar *name, const guchar *prefix,
              const guchar *space, int n_namespaces, const guchar **namespaces, int n_attributes,
              const guchar **attributes);
void tag_free (Tag *tag);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Tag, tag_free)

/* Whether the element is of the project's namespace. */
gboolean tag_is_ours (const Tag *tag);

/* The attribute of no namespace; NULL when the tag has none of that name. */
const Attribute *tag_attribute (const Tag *tag, const char *name);

/* Reads every attribute of no namespace into `target` by the rows of `element`. NULL when all are
 * well, else what is wrong, from the attribute's name on ("the length "abc" is not a number of
 * millimetres"), with its line. */
char *tag_read (const Tag *tag, const Element *element, void *target, int *line);

/* What a message calls the element: `wall "w1"`, or `laying` where it has no id. */
char *tag_title (const Tag *tag);
