// biome-ignore-all lint: written as browsers below the floor read it, without templates, arrows and optional chains
/*
 * The very first script: it depends on nothing, so that it can say why the page does not stand when nothing else can, and hand
 * out the saved jobs whatever happens. Written so that browsers below the floor read it too: no modules, no arrow functions.
 */
;(function () {
  'use strict'
  var FLOOR = 'Safari 16.4, Chrome 112 or Firefox 114, or newer'
  var PATIENCE = 12000 // [ms] after the last script should have run
  var NAME = 'stanchion'
  var standing = false
  var told = ''

  function element(tag, text, parent) {
    var made = document.createElement(tag)
    made.textContent = text
    if (parent) parent.appendChild(made)
    return made
  }

  function button(text, act, parent) {
    var made = element('button', text, parent)
    made.type = 'button'
    made.onclick = function () {
      act(made)
    }
    return made
  }

  /** Say the cause on the page, once; a truer one takes its place. */
  function tell(reason, cause, wayOut) {
    if (standing) return
    told = cause
    var place = document.getElementById('page') || document.body
    place.textContent = ''
    var box = element('section', '', place)
    box.setAttribute('role', 'alert')
    box.setAttribute('data-first', reason)
    box.style.cssText = 'max-width:36rem;margin:2rem auto;padding:0 1rem;font:1.1rem/1.5 sans-serif'
    element('h1', 'Stanchion could not start', box)
    element('p', cause, box)
    element('p', wayOut, box)
    button('Try again', again, box)
    button('Save my jobs as a file', handOut, box)
    element('p', 'Your jobs stay on this device.', box)
    element('pre', [cause, location.origin + location.pathname, navigator.userAgent, new Date().toISOString()].join('\n'), box).style.cssText =
      'white-space:pre-wrap;font-size:.8rem'
  }

  /* ---- What is wrong ---- */

  function scripts() {
    var found = []
    var all = document.querySelectorAll('script[type=module][src], link[rel=modulepreload], link[rel=stylesheet]')
    for (var i = 0; i < all.length; i += 1) found.push(all[i].src || all[i].href)
    return found
  }

  function nameOf(address) {
    return address.replace(document.baseURI.replace(/[^/]*([?#].*)?$/, ''), '').replace(/[?#].*/, '')
  }

  function hex(buffer) {
    return Array.prototype.map
      .call(new Uint8Array(buffer), function (byte) {
        return ('0' + byte.toString(16)).slice(-2)
      })
      .join('')
  }

  /** The site's own list of its files, where it can be had: sizes and hashes. */
  function fileList() {
    return fetch('./files.json', { cache: 'no-cache' })
      .then(function (answer) {
        return answer.ok ? answer.json() : {}
      })
      .catch(function () {
        return {}
      })
  }

  /** What is wrong with one file, in words; empty where nothing is. */
  function fault(address, list) {
    var name = nameOf(address)
    return fetch(address, { cache: 'no-cache' }).then(
      function (answer) {
        if (!answer.ok) return 'The file ' + name + ' is not on the server (HTTP ' + answer.status + ').'
        var type = answer.headers.get('Content-Type') || 'no type'
        if (/html/.test(type)) return 'In place of the file ' + name + ' the server sent a web page (' + type + ').'
        return answer.arrayBuffer().then(function (body) {
          var wanted = list[name]
          if (!wanted) return ''
          if (body.byteLength !== wanted.bytes) return 'The file ' + name + ' arrived incomplete: ' + body.byteLength + ' of ' + wanted.bytes + ' bytes.'
          if (!window.crypto || !crypto.subtle) return ''
          return crypto.subtle.digest('SHA-256', body).then(function (digest) {
            return hex(digest) === wanted.sha256 ? '' : 'The file ' + name + ' arrived changed.'
          })
        })
      },
      function () {
        return 'The file ' + name + ' could not be fetched: there is no connection.'
      },
    )
  }

  /** Look at every script of the page; the first fault is the cause. */
  function diagnose(otherwise) {
    if (standing) return Promise.resolve('')
    if (!('noModule' in HTMLScriptElement.prototype) || !window.fetch || !window.Promise) {
      tell('old-browser', 'This browser is too old: the page takes ' + FLOOR + '.', 'Update the browser, or open the page in another one.')
      return
    }
    return fileList().then(function (list) {
      return Promise.all(
        scripts().map(function (address) {
          return fault(address, list)
        }),
      ).then(function (faults) {
        var found = faults.filter(Boolean)[0]
        if (found) tell('file', found, 'Try again in a minute, with a better connection if yours is weak; a new version may be on its way.')
        else if (otherwise) tell('script', otherwise, 'Try again. If it stays, send the lines below to whoever runs this site.')
        return found || ''
      })
    })
  }

  /** Fetch past every copy what the page is made of, mend the offline copy, then load the page anew. */
  function again(pressed) {
    pressed.disabled = true
    mend().then(function () {
      location.reload()
    })
  }

  function mend() {
    var worker = navigator.serviceWorker && navigator.serviceWorker.controller
    if (!worker) {
      return Promise.all(
        scripts().map(function (address) {
          return fetch(address, { cache: 'reload' }).catch(function () {})
        }),
      )
    }
    return new Promise(function (done) {
      var channel = new MessageChannel()
      channel.port1.onmessage = function (event) {
        if (event.data.type === 'verified' || event.data.type === 'failed') done()
      }
      worker.postMessage({ type: 'verify' }, [channel.port2])
      setTimeout(done, 20000)
    })
  }

  /* ---- The saved jobs ---- */

  function savedJobs() {
    return new Promise(function (done) {
      var opening
      try {
        opening = indexedDB.open(NAME)
      } catch (_) {
        return done([])
      }
      opening.onupgradeneeded = function () {
        opening.transaction.abort() // there was none: none is made
      }
      opening.onerror = opening.onblocked = function () {
        done([])
      }
      opening.onsuccess = function () {
        var db = opening.result
        var stores = ['rows', 'heads', 'words', 'jobs'].filter(function (name) {
          return db.objectStoreNames.contains(name)
        })
        if (!stores.length) return done([])
        var going = db.transaction(stores)
        var found = {}
        stores.forEach(function (name) {
          going.objectStore(name).getAll().onsuccess = function (event) {
            found[name] = event.target.result
          }
        })
        going.oncomplete = function () {
          db.close()
          done(newest(found))
        }
        going.onerror = going.onabort = function () {
          db.close()
          done(newest(found))
        }
      }
    })
  }

  function newest(found) {
    var jobs = {}
    if (!found.rows || !found.rows.length)
      (found.jobs || []).forEach(function (kept, at) {
        if (kept && kept.job) jobs['old' + at] = { rev: 0, job: kept.job }
      })
    ;(found.rows || []).concat(found.words || []).forEach(function (row) {
      if (row && row.job && (!jobs[row.id] || jobs[row.id].rev < row.rev)) jobs[row.id] = row
    })
    ;(found.heads || []).forEach(function (head) {
      if (head && head.removed) delete jobs[head.id]
    })
    return jobs
  }

  /** Last words stand over what the database has, where they are newer. */
  function withWords(jobs) {
    try {
      Object.keys(localStorage).forEach(function (key) {
        if (key.indexOf('stanchion-words:') !== 0) return
        var words = JSON.parse(localStorage.getItem(key))
        var id = key.slice('stanchion-words:'.length)
        if (words && words.job && (!jobs[id] || jobs[id].rev < words.rev)) jobs[id] = words
      })
    } catch (_) {
      // What the database has is all there is.
    }
    return jobs
  }

  function handOut(pressed) {
    savedJobs().then(function (found) {
      var jobs = withWords(found)
      var all = Object.keys(jobs).map(function (id) {
        return jobs[id].job
      })
      if (!all.length) {
        pressed.textContent = 'No job is saved on this device'
        return
      }
      var link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob([JSON.stringify({ format: 'stanchion-jobs', version: 1, jobs: all }, null, 1)], { type: 'application/json' }))
      link.download = 'stanchion-jobs.json'
      document.body.appendChild(link)
      link.click()
      document.body.removeChild(link)
    })
  }

  /* ---- Watching ---- */

  window.stanchionFirst = {
    drawn: function () {
      standing = true
      document.documentElement.setAttribute('data-drawn', '')
    },
    failed: function (cause) {
      standing = false
      void diagnose('The page stopped with an error of its own: ' + cause)
    },
  }

  // A script that does not arrive tells its own element only; one that cannot be read tells the window.
  addEventListener(
    'error',
    function (event) {
      var from = event.target
      if (standing || !from) return
      if (from.tagName === 'SCRIPT') void diagnose('The file ' + nameOf(from.src) + ' did not arrive, or one that it needs did not.')
      else if (event.message) void diagnose('A script of the page stopped: ' + event.message)
    },
    true,
  )
  addEventListener('unhandledrejection', function (event) {
    if (!standing) void diagnose('A script of the page stopped: ' + (event.reason && event.reason.message ? event.reason.message : event.reason))
  })
  addEventListener('load', function () {
    if (!('noModule' in HTMLScriptElement.prototype)) void diagnose('')
    setTimeout(function look() {
      if (standing) return
      // Nothing stands and nothing was heard: look by ourselves, and again, for it may only be slow.
      Promise.resolve(told ? '' : diagnose('Starting came to a halt.')).then(function () {
        setTimeout(look, PATIENCE)
      })
    }, PATIENCE)
  })

  // Once per visit the page helps itself: where the fault is gone when there is a connection again, it is loaded anew.
  addEventListener('online', function () {
    if (standing || !told) return
    try {
      if (sessionStorage.getItem('stanchion-retried')) return
      sessionStorage.setItem('stanchion-retried', '1')
    } catch (_) {
      return
    }
    mend().then(function () {
      location.reload()
    })
  })
})()
